/** Tags and attribute names of a document, read by a reader of its own: inside a tag no < or > is left unescaped. */
const TAG = /<(\/?)([a-zA-Z!][\w-]*)((?:\s[^<>]*)?)>/g;

export function tagsOf(html: string): string[] {
  return [...html.matchAll(TAG)].filter(([, slash]) => slash === '').map(([, , name]) => name ?? '');
}

export function attributesOf(html: string): string[] {
  return [...html.matchAll(TAG)].flatMap(([, , , rest = '']) =>
    [...rest.replace(/"[^"]*"/g, '""').matchAll(/([\w:-]+)=""/g)].map(([, name]) => name ?? ''),
  );
}

/** What a document would fetch: values of attributes and of its style sheet that name a place. */
export function addressesOf(html: string): string[] {
  const attributes = [...html.matchAll(/\s(?:src|href|xlink:href|action|srcset|data|poster)="([^"]*)"/g)];
  const styles = [...html.matchAll(/url\(([^)]*)\)/g)];
  return [...attributes, ...styles].map(([, address]) => address ?? '');
}
