/**
 * The demo inspection: its record opens, its pictures are those it names, and the strokes computed from its simulated hand marks
 * hold the rendered scenes' truth.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { DEMO_INSPECTION } from '../../src/app/media/demo-sets.ts';
import { radFromDeg } from '../../src/basics/units.ts';
import type { WithU } from '../../src/measurement/measured.ts';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import { openRecord } from '../../src/record/open-record.ts';
import { type Assessment, assess } from '../../src/record/results.ts';
import { demoCapture } from '../bench/demo-capture.ts';
import { SAMPLE_MEDIA, truthOf } from '../bench/demo-truth.ts';
import { MEASURED_SETS } from '../bench/demo-wheel-ends.ts';

const text = readFileSync(`${SAMPLE_MEDIA}/${DEMO_INSPECTION.record}`, 'utf8');
const record = (() => {
  const opened = openRecord(text);
  if (!opened.ok) throw new Error(JSON.stringify(opened.failure));
  return opened.value;
})();

test('the pictures that come with it are those that the record names, as the app would state them', () => {
  const brought = DEMO_INSPECTION.pictures.map((place) => demoCapture('any', place));
  const named = new Map(record.captures.map((capture) => [capture.sha256, capture]));
  expect(named.size).toBe(record.captures.length);
  expect(brought.map(({ sha256 }) => sha256).sort()).toEqual([...named.keys()].sort());
  for (const { id: _any, ...facts } of brought) expect(named.get(facts.sha256)).toMatchObject(facts);
});

test('every stroke and free stroke holds its truth within U95, every arm angle within 1.5 U95', () => {
  for (const { set, id } of MEASURED_SETS) {
    const truth = truthOf(set);
    const { measurement } = assessed(id);
    if (!measurement.ok) throw new Error(`${id}: ${measurement.failure.code}`);
    const { strokeMm, freeStrokeMm, armAngleReleasedRad, armAngleAppliedRad } = measurement.value;
    expectWithin(strokeMm, truth.strokeMm, id);
    // Of ten angles at 95 % one may well be outside.
    expectWithin(armAngleReleasedRad, radFromDeg(truth.armAngleReleasedDeg), id, 1.5);
    expectWithin(armAngleAppliedRad, radFromDeg(truth.armAngleAppliedDeg), id, 1.5);
    if (truth.freeStrokeMm === undefined) expect(freeStrokeMm).toBeNull();
    else expectWithin(freeStrokeMm, truth.freeStrokeMm, id);
    expect(strokeMm.U95, id).toBeLessThan(2);
  }
});

test('the marks scatter round the true points as much as they say', () => {
  const off = MEASURED_SETS.flatMap(({ set, id }) =>
    measured(id).measurement.views.flatMap(({ state, marks }) => {
      const view = truthOf(set).views.find((each) => each.state === state);
      return marks
        .filter(({ kind }) => kind === 'clevis-pin')
        .flatMap(({ xPx, yPx, sigmaPx, placedBy }) => {
          expect(placedBy).toBe('hand');
          const [u, v] = view?.points.clevisPin.px ?? [0, 0];
          return [(xPx - u) / sigmaPx, (yPx - v) / sigmaPx];
        });
    }),
  );
  const rms = Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / off.length);
  expect(off.length).toBeGreaterThan(60);
  expect(rms).toBeGreaterThan(0.75);
  expect(rms).toBeLessThan(1.25);
});

test('the walk-round finds what the demo is meant to show', () => {
  const results = inspectionResults(record, (_wheelEnd, { id }) => assessed(id));
  const found = results.wheelEnds.map(({ position: { axle, side }, state, asFound, basis }) => ({
    at: `${axle} ${side}`,
    asFound: asFound.state,
    state,
    basis,
  }));
  expect(found).toEqual([
    { at: '1 left', asFound: 'within limit', state: 'within limit', basis: 'pictures' },
    { at: '1 right', asFound: 'not decided', state: 'not decided', basis: 'pictures' },
    { at: '2 left', asFound: 'over limit', state: 'within limit', basis: 'pictures' },
    { at: '2 right', asFound: 'within limit', state: 'within limit', basis: 'pictures' },
    { at: '3 left', asFound: 'within limit', state: 'within limit', basis: 'hand' },
    { at: '3 right', asFound: 'not-started', state: 'not-started', basis: null },
  ]);
  expect(results.conditions).toEqual([{ code: 'conditions/not-answered', condition: 'drumsCold' }]);
  expect(assessed('1-right-found').finding.reasons).toEqual([{ code: 'finding/near-limit', limitMm: 50.8 }]);
  const handNotes = results.wheelEnds.flatMap(({ notes }) =>
    notes.filter(({ code }) => code.includes('hand')),
  );
  expect(handNotes).toEqual([]);
});

function measured(id: string) {
  for (const wheelEnd of record.wheelEnds) {
    const measurement = wheelEnd.measurements.find((each) => each.id === id);
    if (measurement) return { wheelEnd, measurement };
  }
  throw new Error(`no measurement ${id}`);
}

/** Measured once for all tests. */
const kept = new Map<string, Assessment>();

function assessed(id: string): Assessment {
  const before = kept.get(id);
  if (before) return before;
  const { wheelEnd, measurement } = measured(id);
  const assessment = assess(record, wheelEnd, measurement);
  kept.set(id, assessment);
  return assessment;
}

function expectWithin(found: WithU | null | undefined, truth: number, what: string, share = 1): void {
  if (!found) throw new Error(`${what}: not measured`);
  expect(Math.abs(found.value - truth), what).toBeLessThanOrEqual(share * found.U95);
}
