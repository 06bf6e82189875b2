import { expect, test } from 'vitest';
import type { Result } from '../../src/basics/result.ts';
import type { Chamber } from '../../src/finding/chamber.ts';
import type { Finding } from '../../src/finding/decision.ts';
import type { Measurement, MeasurementFailure } from '../../src/measurement/measurement.ts';
import { assess, findingFor, measureInput } from '../../src/record/results.ts';
import { chamber } from '../finding/chambers.ts';
import { exampleRecord } from './example-record.ts';
import { measuredAs } from './measured-as.ts';

const record = exampleRecord();
const [wheelEnd] = record.wheelEnds;
const measurement = wheelEnd?.measurements[0];
if (!wheelEnd || !measurement) throw new Error('the example has no measurement');

type Changes = { chamber?: Chamber | null; ruleSetId?: string; applied?: 'seen' };

function finding(measured: Result<Measurement, MeasurementFailure>, changes: Changes = {}): Finding {
  if (!wheelEnd || !measurement) throw new Error('no measurement');
  return findingFor(
    { ...record, ruleSetId: changes.ruleSetId ?? record.ruleSetId },
    { ...wheelEnd, chamber: changes.chamber === undefined ? wheelEnd.chamber : changes.chamber },
    {
      ...measurement,
      overStrokeMark: {
        released: null,
        applied: changes.applied ? { sight: changes.applied, crop: null, proposal: null } : null,
        bandColour: null,
      },
    },
    measured,
  );
}

test('a measured stroke is decided against the limit of the chamber', () => {
  expect(finding(measuredAs(40)).outcome).toBe('within limit');
  expect(finding(measuredAs(55)).outcome).toBe('over limit');
  expect(finding(measuredAs(55), { chamber: chamber('clamp', '30', { strokeClass: 'long' }) }).outcome).toBe(
    'within limit',
  );
});

test('what was seen of the over-stroke mark goes beside it', () => {
  expect(finding(measuredAs(40), { applied: 'seen' }).notes).toMatchObject([
    { code: 'over-stroke-mark/seen-but-within', beyondPlay: true },
  ]);
});

test.each<[string, Changes, string]>([
  ['no chamber', { chamber: null }, 'limit/chamber-unknown'],
  ['a type that is not listed', { chamber: chamber('clamp', '31') }, 'limit/type-not-listed'],
  ['a rule set that nobody knows', { ruleSetId: 'elsewhere' }, 'rule-set/unknown'],
])('%s: not decided, and why', (_what, changes, code) => {
  const undecided = finding(measuredAs(10), changes);
  expect(undecided).toMatchObject({ outcome: 'not decided', limit: null, judgements: [] });
  expect(undecided.reasons).toMatchObject([{ code: 'finding/limit-unknown', failure: { code } }]);
});

test('no measurement: not decided, with the reason and the limit that would have held', () => {
  const failure = { code: 'measurement/no-scale' } as const;
  const undecided = finding({ ok: false, failure });
  expect(undecided).toMatchObject({
    outcome: 'not decided',
    reasons: [{ code: 'finding/not-measured', failure }],
  });
  expect(undecided.limit?.values[0].limitIn).toBe(2);
});

test('the engine is given the marks, the references and every capture', () => {
  expect(measureInput(record, measurement)).toEqual({
    views: measurement.views,
    sideViews: [],
    references: measurement.references,
    cameraStill: false,
    captures: record.captures,
    cameraProfile: null,
  });
});

// True values of the invented example: tests/fixtures/records/README.md.
test.each([
  ['a1l-found', 41],
  ['a1r-found', 59],
  ['a1r-repaired', 39],
  ['a2l-found', 60.5],
  ['a2r-repaired', 44],
])('the engine measures %s of the example as %f mm within its U', (id, trueMm) => {
  for (const end of record.wheelEnds)
    for (const one of end.measurements.filter((candidate) => candidate.id === id)) {
      const { measurement: measured, finding: found } = assess(record, end, one);
      if (!measured.ok) throw new Error(measured.failure.code);
      const { value, U95 } = measured.value.strokeMm;
      // One and a half times U: one measurement in three hundred lies outside by chance.
      expect(Math.abs(value - trueMm)).toBeLessThan(1.5 * U95);
      expect(found.outcome).not.toBe(trueMm > 57.15 ? 'within limit' : 'over limit');
      return;
    }
  throw new Error(`no measurement ${id}`);
});

test('nothing of known size in the picture: refused, not decided', () => {
  const end = record.wheelEnds[3];
  const one = end?.measurements[0];
  if (!end || !one) throw new Error('no measurement');
  const { measurement: measured, finding: found } = assess(record, end, one);
  expect(measured).toMatchObject({ ok: false, failure: { code: 'measurement/no-scale' } });
  expect(found.outcome).toBe('not decided');
});

test('the same record gives the engine the same parts, so that what was found of it still holds', () => {
  const [one, other] = [measureInput(record, measurement), measureInput(record, measurement)];
  for (const key of Object.keys(one) as (keyof typeof one)[]) expect(one[key]).toBe(other[key]);
});
