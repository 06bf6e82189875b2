import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openRecord } from '../../src/record/open-record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { exampleRecord, exampleText } from './example-record.ts';

test('a record that is opened and saved is the same text, to the byte', () => {
  expect(recordText(exampleRecord())).toBe(exampleText());
});

test('rows of numbers are on one line, what people typed stays as it is', () => {
  const typed = '[\n  1,\n  2\n]';
  const { wheelEnds, ...rest } = exampleRecord();
  const text = recordText({ ...rest, wheelEnds: wheelEnds.map((each) => ({ ...each, notes: typed })) });
  expect(text).toContain('"xCentiPx": [95090,null,null]');
  expect(JSON.parse(text).wheelEnds[0].notes).toBe(typed);
});

test('the order of the keys in what was opened does not matter', () => {
  fc.assert(
    fc.property(fc.infiniteStream(fc.nat()), (numbers) => {
      const shuffled = reordered(JSON.parse(exampleText()), () => numbers.next().value ?? 0);
      const opened = openRecord(JSON.stringify(shuffled));
      expect(opened.ok && recordText(opened.value)).toBe(exampleText());
    }),
    { numRuns: 20 },
  );
});

test('what is no valid record is not saved', () => {
  expect(() => recordText({ ...exampleRecord(), id: '' })).toThrow();
});

function reordered(value: unknown, next: () => number): unknown {
  if (Array.isArray(value)) return value.map((item) => reordered(item, next));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, item]) => ({ key, item, place: next() }));
  entries.sort((a, b) => a.place - b.place);
  return Object.fromEntries(entries.map(({ key, item }) => [key, reordered(item, next)]));
}
