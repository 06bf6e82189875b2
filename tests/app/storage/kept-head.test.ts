import { expect, test } from 'vitest';
import { headFits, headOf } from '../../../src/app/storage/kept-head.ts';
import { firstPlace } from '../../../src/app/work/place.ts';
import { exampleRecord } from '../../record/example-record.ts';

const record = exampleRecord();
const head = headOf(
  { id: 'kept', savedAt: '2026-05-12T12:00:00.000Z', record, place: firstPlace(record) },
  null,
);

test('a head tells unit, inspector, day and how many wheel ends were worked on', () => {
  expect(head).toMatchObject({
    recordId: record.id,
    unit: 'Gravel trailer GT-07 (invented)',
    inspector: 'Invented technician',
    wheelEnds: 4,
  });
});

test.each([
  ['', true],
  ['gt-07', true],
  ['  GT-07   technician ', true],
  ['2026-05', true],
  ['gt-07 dump truck', false],
])('a search for "%s" finds it: %s', (typed, found) => {
  expect(headFits({ ...head, createdAt: '2026-05-12T09:41:07.000Z' }, typed)).toBe(found);
});
