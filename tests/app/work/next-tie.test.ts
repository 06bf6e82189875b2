import { expect, test } from 'vitest';
import { nextTie } from '../../../src/app/work/next-tie.ts';
import type { View } from '../../../src/marks/view.ts';

function viewWith(state: View['state'], ties: readonly string[]): View {
  const marks = ties.map((tie) => ({
    kind: 'tie-point' as const,
    tie,
    id: `${state}-${tie}`,
    xPx: 1,
    yPx: 2,
    sigmaPx: 1,
    placedBy: 'hand' as const,
  }));
  return { state, captureId: state, frame: null, marks };
}

test('counts up on the first picture, follows it on the second, then counts on', () => {
  const [none, two] = [viewWith('applied', []), viewWith('released', ['1', '2'])];
  expect(nextTie(none, [])).toBe('1');
  expect(nextTie(two, [none])).toBe('3');
  expect(nextTie(none, [two])).toBe('1');
  expect(nextTie(viewWith('applied', ['1']), [two])).toBe('2');
  expect(nextTie(viewWith('applied', ['1', '2']), [two])).toBe('3');
});

test('takes up a thing that was removed here but stands on the other picture', () => {
  const [here, other] = [viewWith('applied', ['2', '3']), viewWith('released', ['1', '2', '3'])];
  expect(nextTie(here, [other])).toBe('1');
});
