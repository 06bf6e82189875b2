/** The names that files of a package may have. What is not one of these is no file of ours, wherever it would be written to. */
const NAMED = ['manifest.json', 'signature.json', 'record.json', 'results.json', 'report.html'] as const;
/** What an authority says of the manifest. It comes after the manifest was signed, so no manifest lists it. */
export const TIME_STAMP_PATH = 'timestamp.tst';
const IN_FOLDER = /^(?:captures|stills)\/[a-z0-9][a-z0-9-]{0,79}\.[a-z0-9]{1,5}$/;
export const PATH_LIMIT_CHARACTERS = 100;

export const ROLES = ['record', 'results', 'report', 'still', 'capture'] as const;
export type Role = (typeof ROLES)[number];

export function isPackagePath(path: string): boolean {
  return NAMED.some((name) => name === path) || path === TIME_STAMP_PATH || IN_FOLDER.test(path);
}

export function roleOfPath(path: string): Role | null {
  if (path === 'record.json') return 'record';
  if (path === 'results.json') return 'results';
  if (path === 'report.html') return 'report';
  if (!IN_FOLDER.test(path)) return null;
  return path.startsWith('captures/') ? 'capture' : 'still';
}

/** A person's file name, made harmless: '001-img-4711.jpg'. The name itself stays in the record. */
export function capturePath(
  index: number,
  { fileName, kind }: { readonly fileName: string; readonly kind: 'photo' | 'clip' },
): string {
  const dot = fileName.lastIndexOf('.');
  const stem = slug(dot > 0 ? fileName.slice(0, dot) : fileName).slice(0, 40);
  const ending = slug(dot > 0 ? fileName.slice(dot + 1) : '')
    .replaceAll('-', '')
    .slice(0, 5);
  const number = String(index + 1).padStart(3, '0');
  return `captures/${[number, stem || kind].join('-')}.${ending || 'bin'}`;
}

export function stillPath(name: string): string {
  return `stills/${slug(name).slice(0, 80) || 'still'}.jpg`;
}

function slug(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}
