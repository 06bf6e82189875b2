/**
 * Markup made of text that is not trusted: whatever is put into a template comes out as text or as the value of an attribute,
 * never as markup, unless it is itself a Markup. Attributes are written with double quotes.
 */
export class Markup {
  readonly text: string;
  private constructor(text: string) {
    this.text = text;
  }

  static template(parts: readonly string[], values: readonly MarkupValue[]): Markup {
    return new Markup(parts.map((part, i) => part + textOf(values[i] ?? null)).join(''));
  }
}

export type MarkupValue = string | number | Markup | null | readonly MarkupValue[];

/** As a tag: markup`<p>${anything}</p>`. Null is nothing; a list is its members one after the other. */
export function markup(parts: TemplateStringsArray, ...values: readonly MarkupValue[]): Markup {
  return Markup.template(parts, values);
}

function textOf(value: MarkupValue): string {
  if (value === null) return '';
  if (typeof value === 'string') return escaped(value);
  if (typeof value === 'number') return String(value);
  return value instanceof Markup ? value.text : value.map(textOf).join('');
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function escaped(text: string): string {
  return (
    text
      .replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? '')
      // Signs that a page cannot hold are shown as what they are: something unreadable.
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones.
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '\ufffd')
  );
}

/** A string of a style sheet: everything that is not plainly harmless as its number. */
export function cssString(text: string): string {
  const safe = [...text].map((sign) =>
    /[A-Za-z0-9 .,:-]/.test(sign) ? sign : `\\${(sign.codePointAt(0) ?? 0xfffd).toString(16)} `,
  );
  return `"${safe.join('')}"`;
}
