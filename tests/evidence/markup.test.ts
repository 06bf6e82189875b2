import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cssString, markup } from '../../src/evidence/markup.ts';

const NASTY = fc.constantFrom(...'<>"\'&;\\}{*/()@aZ0 \n\u0000\u202e\u2028é💥');

test('any text put into a template leaves no sign of markup', () => {
  fc.assert(
    fc.property(fc.string({ unit: NASTY }), (text) => {
      const written = markup`${text}`.text;
      expect(written).not.toMatch(/[<>"']/);
      expect(written.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
    }),
  );
});

test('markup in markup stays as it is; nothing is nothing; a list is its members', () => {
  expect(markup`<p>${[markup`<b>${1}</b>`, null, '&']}</p>`.text).toBe('<p><b>1</b>&amp;</p>');
});

test('an object that looks like markup is not taken for it', () => {
  const forged = JSON.parse('{"text":"<script>"}');
  expect(() => markup`${forged}`).toThrow();
});

test('any text as a string of a style sheet stays inside its quotes', () => {
  fc.assert(
    fc.property(fc.string({ unit: NASTY }), (text) => {
      expect(cssString(text)).toMatch(/^"(?:[A-Za-z0-9 .,:-]|\\[0-9a-f]{1,6} )*"$/);
    }),
  );
});
