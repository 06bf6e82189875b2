import { expect, test } from 'vitest';
import { resultsOf } from '../../src/evidence/results.ts';
import { blindRecord, blindRecordId } from '../../src/recheck/blind-record.ts';
import { comparisonsOf } from '../../src/recheck/second-reading.ts';
import { openRecord } from '../../src/record/open-record.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { MEASURED, smallRecord } from '../evidence/small-package.ts';
import { exampleRecord } from '../record/example-record.ts';

const SHA = 'ab'.repeat(32);
const first = smallRecord([MEASURED]);
const results = resultsOf(first, '0.1.0');

/** The first reader's marks, the pin of the applied view elsewhere. */
function movedBy(xPx: number): InspectionRecord {
  const text = JSON.stringify(first);
  return JSON.parse(text, (_key, value) =>
    value?.state === 'applied' && value.marks
      ? {
          ...value,
          marks: value.marks.map((mark: { kind: string; xPx: number }) =>
            mark.kind === 'clevis-pin' ? { ...mark, xPx: mark.xPx + xPx } : mark,
          ),
        }
      : value,
  );
}

const strokeOf = (record: InspectionRecord) =>
  comparisonsOf(results.results, resultsOf(record, '0.1.0')).find(({ quantity }) => quantity === 'strokeMm');

test('nothing that the first reader marked, read or concluded is in the second reader’s record', () => {
  const blind = blindRecord(exampleRecord(), SHA, '2026-05-13T08:00:00.000Z');
  expect(openRecord(recordText(blind)).ok).toBe(true);
  expect(blind.id).toBe(blindRecordId(SHA));
  const { wheelEnds, captures, review, history } = blind;
  expect(captures).toEqual(exampleRecord().captures);
  const measurements = wheelEnds.flatMap((wheelEnd) => wheelEnd.measurements);
  expect(measurements.flatMap(({ views }) => views.map(({ state }) => state)).length).toBeGreaterThan(5);
  expect(measurements.flatMap(({ views }) => views.flatMap(({ marks }) => marks))).toEqual([]);
  for (const {
    handReadings,
    otherReadings,
    causeAnswers,
    repairs,
    notes,
    photos,
    adjusterCheck,
  } of wheelEnds)
    expect([handReadings, otherReadings, causeAnswers, repairs, notes, photos, adjusterCheck]).toEqual([
      [],
      [],
      [],
      [],
      '',
      [],
      null,
    ]);
  expect(review).toBeNull();
  expect(history).toHaveLength(1);
});

test('the same marks give no difference; En is the difference over its U from the marks of both', () => {
  expect(strokeOf(first)).toMatchObject({ difference: 0, En: 0, agrees: true });
  const moved = strokeOf(movedBy(3));
  if (!moved) throw new Error('no comparison');
  const marksOf = (record: InspectionRecord) =>
    resultsOf(record, '0.1.0').results[0]?.quantities?.strokeMm?.budget.find(({ group }) => group === 'marks')
      ?.u ?? 0;
  const U95 = 1.96 * Math.sqrt(marksOf(first) ** 2 + marksOf(movedBy(3)) ** 2);
  expect(moved.U95).toBeCloseTo(U95, 9);
  expect(moved.En).toBeCloseTo(moved.difference / U95, 9);
  expect(Math.abs(moved.difference)).toBeGreaterThan(0.1);
});

test('a mark that is clearly elsewhere: the readings do not agree', () => {
  const far = strokeOf(movedBy(40));
  expect(far?.agrees).toBe(false);
  expect(Math.abs(far?.En ?? 0)).toBeGreaterThan(1);
});

test('a measurement without marks is not compared', () => {
  const blind = blindRecord(first, SHA, '2026-05-13T08:00:00.000Z');
  expect(comparisonsOf(results.results, resultsOf(blind, '0.1.0'))).toEqual([]);
});
