import { expect, test } from 'vitest';
import { besideInGroup, tabStops } from '../../../src/app/viewer/tab-stops.ts';

const mark = (
  id: string,
  more: { readonly line?: 'row'; readonly minor?: true; readonly selected?: true },
) => ({
  id,
  line: null,
  minor: false,
  selected: false,
  ...more,
});
const marks = [
  mark('face', {}),
  mark('1 in', { line: 'row' }),
  mark('2 in', { line: 'row', minor: true }),
  mark('3 in', { line: 'row' }),
  mark('tie 1', { minor: true }),
  mark('tie 2', { minor: true }),
  mark('pin', {}),
];

test('of many alike the Tab key stops at one: the selected, else the first', () => {
  expect([...tabStops(marks)]).toEqual(['face', '1 in', 'tie 1', 'pin']);
  const selected = marks.map((each) =>
    each.id === '2 in' ? mark('2 in', { line: 'row', selected: true }) : each,
  );
  expect([...tabStops(selected)]).toEqual(['face', '2 in', 'tie 1', 'pin']);
});

test('the page keys go along the group and end where it ends', () => {
  const at = (id: string) => marks.find((each) => each.id === id) ?? mark(id, {});
  expect(besideInGroup(marks, at('1 in'), 1)).toBe('2 in');
  expect(besideInGroup(marks, at('3 in'), 1)).toBeNull();
  expect(besideInGroup(marks, at('1 in'), -1)).toBeNull();
  expect(besideInGroup(marks, at('tie 2'), -1)).toBe('tie 1');
  expect(besideInGroup(marks, at('pin'), 1)).toBeNull();
});
