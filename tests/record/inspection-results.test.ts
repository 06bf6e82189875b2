import { expect, test } from 'vitest';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { findingFor } from '../../src/record/results.ts';
import type { WheelEnd } from '../../src/record/wheel-end.ts';
import { exampleRecord } from './example-record.ts';
import { measuredAs } from './measured-as.ts';

const record = exampleRecord();

/** Every measurement with this stroke; null: under way. */
function results(strokesMm: Readonly<Record<string, number | null>>, of: InspectionRecord = record) {
  return inspectionResults(of, (wheelEnd, measurement) => {
    const strokeMm = strokesMm[measurement.id] ?? null;
    if (strokeMm === null) return null;
    const measured = measuredAs(strokeMm);
    return { measurement: measured, finding: findingFor(of, wheelEnd, measurement, measured) };
  });
}

function withEnd(index: number, changes: Partial<WheelEnd>): InspectionRecord {
  return {
    ...record,
    wheelEnds: record.wheelEnds.map((end, i) => (i === index ? { ...end, ...changes } : end)),
  };
}

const AS_FOUND = { 'a1l-found': 41, 'a1r-found': 59, 'a2l-found': 60 };

test('each wheel end has its state; what is over stays so until the recheck has a stroke', () => {
  const before = results(AS_FOUND);
  expect(before.wheelEnds.map(({ state }) => state)).toEqual([
    'within limit',
    'over limit',
    'not decided',
    'begun',
  ]);
  expect(before.wheelEnds[1]).toMatchObject({ holds: 'as-found', repaired: true, basis: 'pictures' });
  expect(before.counts).toEqual({
    'not-started': 0,
    begun: 1,
    'within limit': 1,
    'over limit': 1,
    'not decided': 1,
  });

  const after = results({ ...AS_FOUND, 'a1r-repaired': 39 }).wheelEnds[1];
  expect(after).toMatchObject({ state: 'within limit', holds: 'after-repair', repaired: true });
  expect(after?.asFound.state).toBe('over limit');
  expect(after?.changeMm?.value).toBeCloseTo(-20, 12);
  expect(after?.changeMm?.u).toBeCloseTo(0.3 * Math.SQRT2, 12);
  expect(after?.changeMm?.significant).toBe(true);
});

test('a place of the plan without a wheel end is not started, and its brake is not known', () => {
  const first = { ...record, wheelEnds: record.wheelEnds.slice(0, 1) };
  const { counts, roadside, axles } = results(AS_FOUND, first);
  expect(counts).toMatchObject({ 'not-started': 3, 'within limit': 1 });
  expect(axles[1]).toMatchObject({ axle: 2, left: null, right: null });
  expect(roadside?.asFound).toMatchObject({ brakes: 4, least: 0, most: 3, reached: 'open' });
  expect(roadside?.asFound.unknown).toHaveLength(3);
});

test('the hand reading decides where the pictures do not; a contradiction decides nothing', () => {
  const hand = (appliedMm: number): Partial<WheelEnd> => ({
    handReadings: [
      { id: 'h', purpose: 'as-found', quantity: 'stroke', releasedMm: 100, appliedMm, graduationMm: 1.5875 },
    ],
  });
  const undecidedByPictures = results({ 'a1l-found': 50.8 }, withEnd(0, hand(160))).wheelEnds[0];
  expect(undecidedByPictures).toMatchObject({ state: 'over limit', basis: 'hand' });
  expect(results({}, withEnd(0, hand(160))).wheelEnds[0]).toMatchObject({ basis: 'hand' });
  const contradicted = results({ 'a1l-found': 41 }, withEnd(0, hand(160))).wheelEnds[0];
  expect(contradicted).toMatchObject({ state: 'not decided', asFound: { contradicted: true } });
  expect(contradicted?.notes.map(({ code }) => code)).toEqual([
    'chamber/not-looked-at',
    'wheel-end/hand-contradicts',
    'wheel-end/hand-differs',
  ]);
  expect(results({ 'a1l-found': 41 }, withEnd(0, hand(141.5))).wheelEnds[0]).toMatchObject({
    state: 'within limit',
    basis: 'pictures',
    notes: [{ code: 'chamber/not-looked-at' }],
  });
});
