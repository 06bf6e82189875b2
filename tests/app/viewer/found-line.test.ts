import { expect, test } from 'vitest';
import { alongLine, isRoomForDots } from '../../../src/app/viewer/found-line.ts';

/** Half a rim that opens to the right, from its upper end to the lower. */
const RIM = Array.from({ length: 9 }, (_, i) => {
  const turn = Math.PI / 2 + (i * Math.PI) / 8;
  return { id: `${i}`, xPx: 300 + 40 * Math.cos(turn), yPx: 200 - 90 * Math.sin(turn), line: 'rim' as const };
});
const ROW = Array.from({ length: 6 }, (_, i) => ({
  ...{ id: `t${i}`, xPx: 500 - 20 * i, yPx: 300 + 5 * i },
  line: 'row' as const,
}));
const shuffled = <T>(list: readonly T[]): T[] => list.map((_, i) => list[(i * 5 + 3) % list.length] as T);

const names = (marks: readonly { readonly id: string }[]) => marks.map(({ id }) => id).join(' ');
const eitherWay = (marks: readonly { readonly id: string }[]) => [names(marks), names([...marks].reverse())];

test('the line runs along the rim from end to end, in whatever order its marks are kept', () => {
  const all = [...shuffled(RIM), { id: 'pin', xPx: 310, yPx: 200 }];
  expect(eitherWay(RIM)).toContain(names(alongLine(all, 'rim')));
});

test('the line runs along the tape from end to end', () => {
  expect(eitherWay(ROW)).toContain(names(alongLine([...shuffled(ROW), ...RIM], 'row')));
});

test('nothing found, no line', () => {
  expect(alongLine([{ id: 'pin', xPx: 1, yPx: 1, line: null }], 'rim')).toEqual([]);
});

test('dots are shown where they have room', () => {
  const apart = (css: number) => Array.from({ length: 4 }, (_, i) => ({ xCss: css * i, yCss: 0 }));
  expect(isRoomForDots(apart(11))).toBe(false);
  expect(isRoomForDots(apart(13))).toBe(true);
});
