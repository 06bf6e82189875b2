import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isPieceName, piecesOf, wholesOf } from '../../src/evidence/pieces.ts';

const asIs = (name: string) => name;

test('a package of 20 MB goes into three pieces of 8 MB, each byte once', () => {
  expect(piecesOf('a.zip', 20e6, 8e6)).toEqual([
    { name: 'a.zip.1-of-3', from: 0, to: 8e6 },
    { name: 'a.zip.2-of-3', from: 8e6, to: 16e6 },
    { name: 'a.zip.3-of-3', from: 16e6, to: 20e6 },
  ]);
});

test('pieces in any order are one package again, to the byte', () => {
  fc.assert(
    fc.property(
      fc.uint8Array({ minLength: 1, maxLength: 300 }),
      fc.integer({ min: 1, max: 90 }),
      fc.nat(),
      (bytes, limit, turn) => {
        const pieces = piecesOf('b.zip', bytes.length, limit).map(({ name, from, to }) => ({
          name,
          bytes: bytes.slice(from, to),
        }));
        const at = turn % pieces.length;
        const shuffled = [...pieces.slice(at), ...pieces.slice(0, at)].toReversed();
        const [whole, ...others] = wholesOf(shuffled, ({ name }) => name);
        expect(others).toEqual([]);
        if (!whole?.ok) throw new Error('not whole');
        expect(whole.value.pieces.flatMap((piece) => [...piece.bytes])).toEqual([...bytes]);
      },
    ),
    { numRuns: 60 },
  );
});

test('a missing piece is named, and whole packages beside it are whole', () => {
  const [pieces, whole] = wholesOf(['c.zip.3-of-3', 'd.zip', 'c.zip.1-of-3'], asIs);
  expect(pieces).toEqual({
    ok: false,
    failure: { code: 'pieces/missing', name: 'c.zip', missing: [2], count: 3 },
  });
  expect(whole).toEqual({ ok: true, value: { name: 'd.zip', pieces: ['d.zip'] } });
});

test('pieces of another count are of another package; names that are no piece’s stay as they are', () => {
  expect(wholesOf(['e.zip.1-of-2', 'e.zip.2-of-3'], asIs).every(({ ok }) => !ok)).toBe(true);
  expect(wholesOf(['e.zip.1-of-0'], asIs)).toMatchObject([{ ok: false }]);
  expect(['a.zip', 'a.zip.1', 'a.zip.1-of-', 'photo.jpg'].some(isPieceName)).toBe(false);
});
