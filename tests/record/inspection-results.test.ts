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
  const undecidedByPictures = results({ 'a1l-found': 50.8 }, withEnd(0, hand(152.4))).wheelEnds[0];
  expect(undecidedByPictures).toMatchObject({ state: 'over limit', basis: 'hand' });
  // 50.8 and 60 mm cannot both be right, though the pictures alone decide nothing.
  const apart = results({ 'a1l-found': 50.8 }, withEnd(0, hand(160))).wheelEnds[0];
  expect(apart).toMatchObject({ state: 'not decided', asFound: { contradicted: true } });
  // Within by the pictures, near the limit by hand, and further apart than both explain.
  const doubted = results({ 'a1l-found': 48 }, withEnd(0, hand(151))).wheelEnds[0];
  expect(doubted).toMatchObject({ state: 'not decided', asFound: { contradicted: true } });
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

test('picture and tape: the difference with its uncertainty; a hair apart it is not significant', () => {
  const reading = { id: 'h', purpose: 'as-found', quantity: 'stroke', releasedMm: 100 } as const;
  const withHand = (appliedMm: number) =>
    withEnd(0, { handReadings: [{ ...reading, appliedMm, graduationMm: 1.5875 }] });
  const { differenceMm } = results({ 'a1l-found': 41 }, withHand(142)).wheelEnds[0]?.asFound ?? {};
  // sqrt(0.3^2 + 0.868^2) = 0.918 mm; 1 mm is within 1.96 times that.
  expect(differenceMm?.value).toBeCloseTo(-1, 12);
  expect(differenceMm?.u).toBeCloseTo(0.918, 3);
  expect(differenceMm?.significant).toBe(false);
  const far = results({ 'a1l-found': 41 }, withHand(143)).wheelEnds[0]?.asFound.differenceMm;
  expect(far?.significant).toBe(true);
});

test('power stroke: of one adjustment where it has it, else stroke minus free stroke as independent', () => {
  const free = { value: 12, u: 0.4, U95: 0.784, budget: [] };
  const power = { value: 29, u: 0.1, U95: 0.196, budget: [] };
  const of = (more: Parameters<typeof measuredAs>[2]) =>
    inspectionResults(record, (wheelEnd, measurement) => {
      const measured = measuredAs(41, 0.3, more);
      return { measurement: measured, finding: findingFor(record, wheelEnd, measurement, measured) };
    }).wheelEnds;
  const [together] = of({ freeStrokeMm: free, powerStrokeMm: power });
  expect(together?.asFound.powerStrokeMm).toEqual({ value: 29, u: 0.1, U95: 0.196, basis: 'pictures' });
  // The second wheel end has a free stroke by hand after its repair: 12.7 mm, one reading of a sixteenth.
  const [, apart] = of({});
  expect(apart?.afterRepair.freeStrokeMm).toMatchObject({ value: 12.7, basis: 'hand' });
  expect(apart?.afterRepair.powerStrokeMm?.value).toBeCloseTo(28.3, 12);
  const uFree = Math.hypot(1.5875 / Math.sqrt(12), 1 / Math.sqrt(3));
  expect(apart?.afterRepair.powerStrokeMm?.u).toBeCloseTo(Math.hypot(0.3, uFree), 12);
});

test('a search begins where something is wrong, and asks first what comes before the brake', () => {
  const { wheelEnds } = results(AS_FOUND);
  expect(wheelEnds[0]?.search).toBeNull();
  const search = wheelEnds[1]?.search;
  expect(search?.evidence).toEqual(['stroke-over', 'adjuster-does-not-take-up']);
  // Whether the drums were cold could not be told.
  expect(search?.first).toEqual(['conditions']);
  expect(search?.causes[0]).toMatchObject({ cause: 'adjuster-worn', answers: ['adjuster-turns'] });
  expect(search?.next.map(({ check }) => check)).not.toContain('camshaft-free-of-play');
});

test('a repair that is not measured after, and a recheck that proves no change, are said', () => {
  const codes = (strokes: Parameters<typeof results>[0]) =>
    results(strokes).wheelEnds[1]?.notes.map(({ code }) => code);
  expect(codes(AS_FOUND)).toContain('wheel-end/repair-not-measured');
  expect(codes({ ...AS_FOUND, 'a1r-repaired': 58.6 })).toContain('wheel-end/no-change-proven');
  expect(codes({ ...AS_FOUND, 'a1r-repaired': 39 })).not.toContain('wheel-end/no-change-proven');
});
