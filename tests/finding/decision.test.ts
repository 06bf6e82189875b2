import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseLength } from '../../src/basics/length-text.ts';
import type { Chamber } from '../../src/finding/chamber.ts';
import { decide, type Finding } from '../../src/finding/decision.ts';
import { decidingBound, judge } from '../../src/finding/guard-band.ts';
import { limitFor } from '../../src/finding/limit.ts';
import type { Sights } from '../../src/finding/over-stroke-mark.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import type { Fit, MeasurementWarning } from '../../src/measurement/measurement.ts';
import { chamber, INCH } from './chambers.ts';

const GOOD_FIT: Fit = { chiSquare: 30, degreesOfFreedom: 30, pValue: 0.47, inflation: 1, worstMark: null };
const UNSEEN: Sights = { released: null, applied: null };

type More = { fit?: Fit; sights?: Sights; warnings?: readonly MeasurementWarning[] };

function found(strokeMm: number, u: number, wanted: Chamber, more: More = {}): Finding {
  const limit = limitFor(wanted, US_RULE_SET);
  if (!limit.ok) throw new Error(limit.failure.code);
  return decide({
    measurement: {
      strokeMm: { value: strokeMm, u, U95: 1.96 * u, budget: [] },
      fit: more.fit ?? GOOD_FIT,
      warnings: more.warnings ?? [],
    },
    limit: limit.value,
    ruleSet: US_RULE_SET,
    sights: more.sights ?? UNSEEN,
  });
}

const STANDARD_30 = chamber('clamp', '30'); // 2 in = 50.8 mm

// JCGM 106:2012, the example of a diode's breakdown voltage: -5.47 V with u 0.05 V against a limit of -5.40 V; published
// probability 0.92 (from memory), Phi(1.4) = 0.91924.
test('the diode of JCGM 106', () => {
  expect(judge(-5.47, 0.05, -5.4).probabilityWithin).toBeCloseTo(0.91924, 5);
  expect(judge(-5.47, 0.05, -5.4).outcome).toBe('not decided');
});

// Worked by hand: Phi((50.8 - y) / u) from a table of the normal distribution.
test.each([
  [50.0, 0.4, 0.97725],
  [49.98, 0.5, 0.9495],
  [49.98, 0.4, 0.97982],
  [50.8, 0.4, 0.5],
  [51.4, 0.4, 0.06681],
])('stroke %f with u %f against 50.8 mm: probability %f', (y, u, p) => {
  expect(judge(y, u, 50.8).probabilityWithin).toBeCloseTo(p, 5);
});

test('what a stroke is found by is the end of its guard that faces the limit', () => {
  expect(decidingBound('within limit', { value: 50, u: 0.4 })).toEqual({ is: 'at most', mm: 50 + 0.658 });
  expect(decidingBound('over limit', { value: 52, u: 0.4 })).toEqual({ is: 'at least', mm: 52 - 0.658 });
  expect(decidingBound('not decided', { value: 50.5, u: 0.4 })).toBeNull();
});

test('the guard of u 0.4 is 0.658 mm', () => {
  expect(judge(50, 0.4, 50.8).guardMm).toBeCloseTo(0.658, 12);
});

test.each([
  [50.8 - 0.659, 'within limit'],
  [50.8 - 0.657, 'not decided'],
  [50.8, 'not decided'],
  [50.8 + 0.657, 'not decided'],
  [50.8 + 0.659, 'over limit'],
])('stroke %f mm with u 0.4 against 50.8 mm: %s', (y, outcome) => {
  const finding = found(y, 0.4, STANDARD_30);
  expect(finding.outcome).toBe(outcome);
  expect(finding.reasons.map((reason) => reason.code)).toEqual(
    outcome === 'not decided' ? ['finding/near-limit'] : [],
  );
});

test('a decided finding has at most one chance in twenty to be wrong, whatever the stroke and u', () => {
  const stroke = fc.double({ min: 1, max: 120, noNaN: true });
  const u = fc.double({ min: 1e-3, max: 30, noNaN: true });
  fc.assert(
    fc.property(stroke, u, (y, uMm) => {
      const { outcome, probabilityWithin } = judge(y, uMm, 50.8);
      if (outcome === 'within limit') expect(probabilityWithin).toBeGreaterThan(0.95);
      if (outcome === 'over limit') expect(probabilityWithin).toBeLessThan(0.05);
      if (outcome === 'not decided') expect(Math.abs(y - 50.8)).toBeLessThanOrEqual(1.645 * uMm + 1e-9);
    }),
  );
});

test('a longer stroke never makes a worse finding better', () => {
  const rank = { 'within limit': 0, 'not decided': 1, 'over limit': 2 };
  const types = fc.constantFrom(STANDARD_30, chamber('clamp', '36'), chamber('bolt', 'B'));
  const stroke = fc.double({ min: 1, max: 120, noNaN: true });
  fc.assert(
    fc.property(types, stroke, stroke, fc.double({ min: 1e-3, max: 10, noNaN: true }), (wanted, a, b, u) => {
      const [short, long] = a < b ? [a, b] : [b, a];
      expect(rank[found(short, u, wanted).outcome]).toBeLessThanOrEqual(rank[found(long, u, wanted).outcome]);
    }),
  );
});

test('no uncertainty, no finding', () => {
  expect(() => judge(50, 0, 50.8)).toThrow();
  expect(() => judge(50, Number.NaN, 50.8)).toThrow();
});

test.each<[number, string, string[]]>([
  [2.1, 'within limit', []],
  [2.25, 'not decided', ['finding/near-limit', 'finding/editions-differ']],
  [2.375, 'not decided', ['finding/editions-differ']],
  [2.5, 'not decided', ['finding/near-limit', 'finding/editions-differ']],
  [2.6, 'over limit', []],
])('type 36 at %f in: %s', (inches, outcome, reasons) => {
  const finding = found(inches * INCH, 0.3, chamber('clamp', '36'));
  expect(finding.outcome).toBe(outcome);
  expect(finding.reasons.map((reason) => reason.code)).toEqual(reasons);
});

test('a chamber called long and stamped standard is decided only where both limits agree', () => {
  const doubtful = chamber('clamp', '30', { strokeClass: 'long', ratedStrokeMm: 2.5 * INCH });
  expect(found(1.8 * INCH, 0.3, doubtful).outcome).toBe('within limit');
  expect(found(2.25 * INCH, 0.3, doubtful).reasons).toEqual([{ code: 'finding/chamber-ambiguous' }]);
  expect(found(2.7 * INCH, 0.3, doubtful).outcome).toBe('over limit');
});

test.each([30, 80])('marks that disagree beyond belief decide nothing at %f mm', (strokeMm) => {
  const fit = { ...GOOD_FIT, chiSquare: 400, pValue: 1e-20, inflation: 3.7 };
  expect(found(strokeMm, 0.3, STANDARD_30, { fit })).toMatchObject({
    outcome: 'not decided',
    judgements: [],
    reasons: [{ code: 'finding/model-does-not-hold', pValue: 1e-20 }],
  });
  expect(found(strokeMm, 0.3, STANDARD_30, { fit: { ...fit, pValue: 1.1e-6 } }).reasons).toEqual([]);
  expect(found(strokeMm, 0.3, STANDARD_30, { fit: { ...fit, pValue: Number.NaN } }).outcome).toBe(
    'not decided',
  );
});

test('a second solution on the other side of the limit leaves it not decided', () => {
  const other = (otherStrokeMm: number) => ({
    warnings: [{ code: 'measurement/two-solutions', otherStrokeMm } as const],
  });
  expect(found(40, 0.3, STANDARD_30, other(58))).toMatchObject({
    outcome: 'not decided',
    reasons: [{ code: 'finding/two-solutions', otherStrokeMm: 58 }],
  });
  expect(found(40, 0.3, STANDARD_30, other(43)).outcome).toBe('within limit');
});

// Common practice, no source: a tape that reads 11 1/4 released and 14 3/8 applied shows a stroke of 3 1/8 in, which is
// 5/8 in over a limit of 2 1/2 in.
test('two tape readings, through the reader of lengths and the decision', () => {
  const readings = ['11 1/4', '14 3/8', '3 1/8', '5/8', '2 1/2'].map((text) => {
    const length = parseLength(text, 'fraction');
    if (!length.ok) throw new Error(length.failure.code);
    return length.value;
  });
  const [released = 0, applied = 0, stroke = 0, excess = 0, limitMm = 0] = readings;
  expect(applied - released).toBeCloseTo(stroke, 9);
  // Two readings to 1/16 in, rectangular: u = (1/16 in / sqrt 12) * sqrt 2 = 0.648 mm.
  const u = (INCH / 16 / Math.sqrt(12)) * Math.SQRT2;
  expect(u).toBeCloseTo(0.648, 3);
  const finding = found(applied - released, u, chamber('clamp', '30', { strokeClass: 'long' }));
  expect(finding.outcome).toBe('over limit');
  expect(finding.judgements[0]?.limitMm).toBeCloseTo(limitMm, 9);
  const count = finding.notes.find((note) => note.code === 'roadside-count/counts');
  expect(count).toMatchObject({ defectiveBrakes: 1, source: 'roadside-count' });
  if (count?.code === 'roadside-count/counts') expect(count.excessMm).toBeCloseTo(excess, 9);
});

// Roadside criterion as reported second-hand: 1/4 in or more past the limit is one defective brake, less is a half.
test.each([
  [2.125, 0.2, 0.5],
  [2.25, 0.2, null],
  [2.375, 0.2, 1],
])('%f in against 2 in counts as %s at the roadside', (inches, u, defectiveBrakes) => {
  const finding = found(inches * INCH, u, STANDARD_30);
  expect(finding.outcome).toBe('over limit');
  expect(finding.notes).toMatchObject([{ code: 'roadside-count/counts', defectiveBrakes }]);
});

test('over both limits of type 36: excess and gap count from the higher', () => {
  const notes = found(2.65 * INCH, 0.2, chamber('clamp', '36'), {
    sights: { released: null, applied: 'not-seen' },
  }).notes;
  const [mark, count] = notes;
  if (mark?.code !== 'over-stroke-mark/not-seen-but-over' || count?.code !== 'roadside-count/counts')
    throw new Error(notes.map((note) => note.code).join());
  expect(mark.gapMm).toBeCloseTo(0.15 * INCH, 9);
  expect(count.excessMm).toBeCloseTo(0.15 * INCH, 9);
});

test('over both limits of type 36, but a whole brake by one text only: not told', () => {
  expect(found(2.65 * INCH, 0.2, chamber('clamp', '36')).notes).toMatchObject([{ defectiveBrakes: null }]);
  expect(found(2.9 * INCH, 0.2, chamber('clamp', '36')).notes).toMatchObject([{ defectiveBrakes: 1 }]);
});

// SAE J1953, 3.1.1: the band's edge lies up to 3.8 mm (0.15 in) before the limit (since June 2012) or after it (before).
test.each([
  ['seen', 48, 'over-stroke-mark/seen-but-within', false],
  ['seen', 50.8 - 3.8 - 0.39 + 0.01, 'over-stroke-mark/seen-but-within', false],
  ['seen', 50.8 - 3.8 - 0.4, 'over-stroke-mark/seen-but-within', true],
  ['not-seen', 53, 'over-stroke-mark/not-seen-but-over', false],
  ['not-seen', 56, 'over-stroke-mark/not-seen-but-over', true],
] as const)('mark %s at %f mm: %s, beyond its play: %s', (applied, strokeMm, code, beyondPlay) => {
  const finding = found(strokeMm, 0.2, STANDARD_30, { sights: { released: null, applied } });
  const note = finding.notes.find((one) => one.code === code);
  expect(note).toMatchObject({ code, beyondPlay, playMm: 3.8 });
});

test('what was seen of the mark never changes the finding', () => {
  const sight = fc.constantFrom('seen', 'not-seen', 'cannot-tell', null);
  fc.assert(
    fc.property(fc.double({ min: 30, max: 70, noNaN: true }), sight, sight, (strokeMm, released, applied) => {
      const plain = found(strokeMm, 0.3, STANDARD_30);
      const looked = found(strokeMm, 0.3, STANDARD_30, { sights: { released, applied } });
      expect({ ...looked, notes: [] }).toEqual({ ...plain, notes: [] });
    }),
  );
});

test('agreement with the mark needs no note; a mark seen while released asks about the spring brake', () => {
  expect(
    found(40, 0.2, STANDARD_30, { sights: { released: 'not-seen', applied: 'not-seen' } }).notes,
  ).toEqual([]);
  expect(found(40, 0.2, STANDARD_30, { sights: { released: null, applied: 'cannot-tell' } }).notes).toEqual(
    [],
  );
  expect(found(40, 0.2, STANDARD_30, { sights: { released: 'seen', applied: null } }).notes).toEqual([
    { code: 'over-stroke-mark/seen-released' },
  ]);
});

test.each([
  [4.9, 'within limit'],
  [5.1, 'not decided'],
])('a mark off by %f of its own deviations: %s', (standardisedResidual, outcome) => {
  const worstMark = { markId: 'm1', kind: 'clevis-pin', state: 'applied', standardisedResidual } as const;
  const finding = found(40, 0.4, STANDARD_30, { fit: { ...GOOD_FIT, worstMark } });
  expect(finding.outcome).toBe(outcome);
  const codes = finding.reasons.map(({ code }) => code);
  expect(codes.includes('finding/mark-contradicts')).toBe(outcome === 'not decided');
});

test.each([
  [{ code: 'measurement/distance-alone' }, 'finding/distance-alone'],
  [{ code: 'measurement/views-apart', apartRad: 0.6 }, 'finding/views-apart'],
] as const)('%o decides nothing', (warning, reason) => {
  const finding = found(30, 0.4, STANDARD_30, { warnings: [warning] });
  expect(finding.outcome).toBe('not decided');
  expect(finding.reasons).toEqual([{ code: reason }]);
});
