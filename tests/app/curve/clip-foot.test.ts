import { expect, test } from 'vitest';
import { broken } from '../../../src/app/curve/clip-foot.ts';

const widthOf = (text: string) => text.length;

test('a note is broken at spaces, no line wider than there is room, no word lost', () => {
  const note = 'Lines drawn over application.mp4, SHA-256 4c190851889f… The original has no lines.';
  const lines = broken(note, 30, widthOf);
  expect(lines.length).toBeGreaterThan(2);
  expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(30);
  expect(lines.join(' ')).toBe(note);
});

test('a word wider than the room stands alone', () => {
  expect(broken('a verylongfilename b', 6, widthOf)).toEqual(['a', 'verylongfilename', 'b']);
});
