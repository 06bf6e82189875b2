import { expect, test } from 'vitest';
import { strokesAsked } from '../../../src/app/assists/assist-asked.ts';
import type { AssistSearch } from '../../../src/app/assists/assists-store.ts';
import { namedStrokes } from '../../../src/app/assists/named-strokes.ts';
import type { Mark } from '../../../src/marks/mark.ts';

const at = (id: string, xPx: number, yPx = 100) => ({ id, xPx, yPx, sigmaPx: 1, placedBy: 'hand' }) as const;
const face: Mark = { kind: 'chamber-face', ...at('face', 101) };
const pin: Mark = { kind: 'clevis-pin', ...at('pin', 420) };
/** 50 pixels to the inch, the face at its zero. */
const graduation = (id: string, inches: number): Mark => ({
  kind: 'tape-graduation',
  readingMm: 25.4 * inches,
  ...at(id, 101 + 50 * inches, 130),
});
const strokes = Array.from({ length: 40 }, (_, i) => ({
  placePx: [101 + 12.5 * (i + 2), 132] as const,
  sigmaPx: 0.1,
  readingMm: 25.4 * (20 + (i + 2) / 4),
}));
const asWith = (marks: readonly Mark[], search: AssistSearch | null, other: readonly Mark[] = []) =>
  strokesAsked(marks).map((asked) => namedStrokes({ ...asked, search }, marks, [{ marks: other }]));
const found = { is: 'found', marks: strokes } as const;
/** By the numerals the face lies at zero. */
const read = {
  is: 'found',
  isRead: true,
  marks: strokes.map((mark) => ({ ...mark, readingMm: mark.readingMm - 25.4 * 20 })),
} as const;

test('strokes are asked for beside a marked rod until two graduations are named or any were found', () => {
  const asked = (...marks: readonly Mark[]) => strokesAsked(marks).map(({ question }) => question.of);
  expect(asked(face)).toEqual([]);
  expect(asked(face, pin)).toEqual(['tape-strokes']);
  expect(asked(face, pin, graduation('a', 2))).toEqual(['tape-strokes']);
  expect(asked(face, pin, graduation('a', 2), graduation('b', 9))).toEqual([]);
  expect(asked(face, pin, { ...graduation('a', 2), placedBy: 'assist' })).toEqual([]);
});

test('a pin that is moved by a pixel asks nothing new', () => {
  expect(strokesAsked([face, { ...pin, xPx: pin.xPx + 1 }])[0]?.question).toEqual(
    strokesAsked([face, pin])[0]?.question,
  );
});

test('with none named whole inches are shown and cannot be taken', () => {
  const [seen] = asWith([face, pin], found);
  expect(seen?.search).toMatchObject({ is: 'seen' });
  expect(seen?.search && 'marks' in seen.search ? seen.search.marks.length : 0).toBe(10);
});

test('with one named all are offered, with the readings that follow, in place of that one', () => {
  const [offered] = asWith([face, pin, graduation('a', 3)], found);
  expect(offered?.instead.map(({ id }) => id)).toEqual(['a']);
  if (offered?.search?.is !== 'found') throw new Error('nothing is offered');
  const quarters = offered.search.marks.map(({ readingMm }) => Math.round((4 * (readingMm ?? 0)) / 25.4));
  expect(quarters).toEqual(strokes.map((_, i) => i + 2));
});

test('what the numerals say is offered with none named, and in place of one that reads so', () => {
  expect(asWith([face, pin], read)[0]?.search).toEqual(read);
  const [offered] = asWith([face, pin, graduation('a', 3)], read);
  expect(offered?.search).toEqual(read);
  expect(offered?.instead.map(({ id }) => id)).toEqual(['a']);
});

test('where a typed reading and the numerals differ, both are held ready and neither is offered', () => {
  // The third inch, typed as the second: the tape then begins an inch from the face, here half an inch away.
  const other = { ...graduation('a', 3), readingMm: 25.4 * 2 } as Mark;
  const [doubted] = asWith([face, pin, other], read);
  if (doubted?.search?.is !== 'doubted') throw new Error('it is not doubted');
  const { typedMm, readMm, byTyped, byRead } = doubted.search.doubt;
  expect([typedMm, readMm].map((mm) => Math.round((1000 * mm) / 25.4) / 1000)).toEqual([2, 3]);
  expect(byRead).toEqual(read.marks);
  expect(byTyped).toBeNull();
  // With the face half an inch on, either could be.
  const onward: Mark = { ...face, xPx: face.xPx + 25 };
  const [either] = asWith([onward, pin, other], read);
  if (either?.search?.is !== 'doubted') throw new Error('it is not doubted');
  const at3 = either.search.doubt.byTyped?.find(({ placePx }) => placePx[0] === 251);
  expect((at3?.readingMm ?? 0) / 25.4).toBeCloseTo(2, 6);
});

test('a reading marked beside the blade says nothing of its strokes', () => {
  const beside = { ...graduation('a', 3), yPx: 400 } as Mark;
  expect(asWith([face, pin, beside], read)).toEqual([null]);
});

test('nothing is offered, and nothing said, where the one that is named does not fit or no strokes were found', () => {
  const other = { ...graduation('a', 3), readingMm: 25.4 * 5 } as Mark;
  expect(asWith([face, pin, other], found)).toEqual([null]);
  const failed = { is: 'failed', failure: { code: 'tape/not-seen' } } as const;
  expect(asWith([face, pin, graduation('a', 3)], failed)).toEqual([null]);
  expect(asWith([face, pin], failed)[0]?.search).toEqual(failed);
});

test('one that does not begin at the face is read from one that is named where another picture shows how it lies', () => {
  // Here and there 40 pixels to the inch, as seen from farther off; there the face lies at the fourth inch, slipped a third of one.
  const there = (sign: 1 | -1, readings: readonly number[]): readonly Mark[] => {
    const placed = (inches: number) => ({
      ...graduation(`there ${inches}`, inches),
      xPx: 300 + sign * 40 * (inches - 4.3),
    });
    return [{ ...face, xPx: 300 }, { ...pin, xPx: 560 }, ...readings.map(placed)];
  };
  const readingsWith = (inches: number, other: readonly Mark[]) => {
    const third = { ...graduation('a', 3), readingMm: 25.4 * inches } as Mark;
    const [offered] = asWith([face, pin, third], found, other);
    return offered?.search?.is === 'found'
      ? offered.search.marks.map(({ readingMm }) => Math.round((4 * (readingMm ?? 0)) / 25.4))
      : null;
  };
  expect(readingsWith(7, [])).toBeNull();
  expect(readingsWith(7, there(1, [5]))).toBeNull();
  const onward = strokes.map((_, i) => i + 2 + 4 * 4);
  expect(readingsWith(7, there(1, [5, 9]))).toEqual(onward);
  expect(readingsWith(7, there(1, [4, 5, 6, 7, 8, 9]))).toEqual(onward);
  // Two inches farther on, at its zero, or the other way round it does not lie as there.
  expect(readingsWith(9, there(1, [5, 9]))).toBeNull();
  expect(readingsWith(7, there(-1, [1, 3]))).toBeNull();
  expect(readingsWith(3, there(1, [5, 9]))).toBeNull();
  // Towards the face it ends at its zero, four inches from there.
  expect(readingsWith(1, there(-1, [1, 3]))).toEqual(Array.from({ length: 14 }, (_, i) => i + 1));
});
