import { expect, test } from 'vitest';
import type { PlaceTies } from '../../../src/app/work/actions.ts';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import { nextTie } from '../../../src/app/work/next-tie.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import { recordWithPair, TARGET } from './sample.ts';

const point = (id: string) => ({ id, xPx: 1, yPx: 2, sigmaPx: 0.2 });
const placing = (...ids: string[]): PlaceTies => ({
  type: 'place-ties',
  first: 'released',
  second: 'applied',
  ties: ids.map((id) => ({ first: point(`${id}-r`), second: point(`${id}-a`) })),
});
const viewsOf = (record: ReturnType<typeof recordWithPair>) =>
  record.wheelEnds[0]?.measurements[0]?.views ?? [];
const named = (marks: readonly Mark[]) =>
  marks.map((mark) => `${mark.kind === 'tie-point' ? mark.tie : mark.kind} ${mark.id}`);

test('found ties take the place of those found before, on both pictures; those of a hand stay', () => {
  const byHand: Mark = { kind: 'tie-point', tie: '1', ...point('hand'), placedBy: 'hand' };
  let record = applyAction(recordWithPair(), TARGET, { type: 'place-mark', state: 'released', mark: byHand });
  record = applyAction(record, TARGET, placing('x', 'y'));
  record = applyAction(record, TARGET, placing('z'));
  expect(viewsOf(record).map(({ marks }) => named(marks))).toEqual([['1 hand', 'a1 z-r'], ['a1 z-a']]);
});

test('a found tie that a hand has moved stays with its other half, and its name is not given again', () => {
  let record = applyAction(recordWithPair(), TARGET, placing('x', 'y'));
  const moved = { xPx: 5, yPx: 6, sigmaPx: 1 };
  record = applyAction(record, TARGET, { type: 'move-mark', state: 'applied', markId: 'x-a', point: moved });
  record = applyAction(record, TARGET, placing('z'));
  expect(viewsOf(record).map(({ marks }) => named(marks))).toEqual([
    ['a1 x-r', 'a2 z-r'],
    ['a1 x-a', 'a2 z-a'],
  ]);
});

test('a found tie of which one half was removed is not asked for by hand', () => {
  let record = applyAction(recordWithPair(), TARGET, placing('x'));
  record = applyAction(record, TARGET, { type: 'delete-mark', state: 'applied', markId: 'x-a' });
  const [released, applied] = viewsOf(record);
  if (!released || !applied) throw new Error('a pair has two views');
  expect(nextTie(applied, [released])).toBe('1');
});
