import { expect, test } from 'vitest';
import { ok } from '../../src/basics/result.ts';
import { limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { handLength, handResult, uOfReadingMm } from '../../src/record/hand-results.ts';
import type { HandReading } from '../../src/record/wheel-end.ts';
import { chamber, INCH } from '../finding/chambers.ts';

function reading(changes: Partial<HandReading> = {}): HandReading {
  return {
    id: 'h',
    purpose: 'as-found',
    quantity: 'stroke',
    releasedMm: 100,
    appliedMm: 150,
    graduationMm: INCH / 16,
    ...changes,
  };
}

// JCGM 100:2008, 4.3.7: a rectangular distribution of half width a has the standard uncertainty a / sqrt 3; here a = q / 2.
test.each([
  [INCH / 16, 0.458, 0.648],
  [INCH / 8, 0.917, 1.296],
])('a tape read to %f mm: %f mm for one reading, %f mm for the difference of two', (q, one, two) => {
  expect(uOfReadingMm(q)).toBeCloseTo(one, 3);
  const length = handLength(reading({ graduationMm: q }));
  if (!length.ok) throw new Error(length.failure.code);
  expect(length.value.uGraduationMm).toBeCloseTo(two, 3);
  const noted = handLength(reading({ graduationMm: q, releasedMm: null, appliedMm: 50 }));
  if (!noted.ok) throw new Error(noted.failure.code);
  expect(noted.value.uGraduationMm).toBeCloseTo(one, 3);
  expect(noted.value.value).toBe(50);
});

test('aim and graduation add in squares; U95 is 1.96 u', () => {
  const length = handLength(reading());
  if (!length.ok) throw new Error(length.failure.code);
  const { value, u, U95, uAimMm, uGraduationMm } = length.value;
  expect(value).toBe(50);
  expect(uAimMm).toBeCloseTo(0.57735, 5);
  expect(u ** 2).toBeCloseTo(uAimMm ** 2 + uGraduationMm ** 2, 12);
  // sqrt(0.6481^2 + 0.5774^2) = 0.8680, worked by hand.
  expect(u).toBeCloseTo(0.868, 3);
  expect(U95).toBeCloseTo(1.96 * u, 12);
});

test('applied below released is a misreading, not a stroke', () => {
  expect(handLength(reading({ appliedMm: 99 }))).toEqual({
    ok: false,
    failure: { code: 'hand-reading/applied-below-released', releasedMm: 100, appliedMm: 99 },
  });
});

test('by the same guard band: type 30, 2 in, two readings of a sixteenth', () => {
  const limit = limitFor(chamber('clamp', '30'), US_RULE_SET);
  if (!limit.ok) throw new Error('type 30 is listed');
  const rules = { ruleSet: US_RULE_SET, limit: ok(limit.value) };
  const found = (strokeMm: number) => handResult(reading({ appliedMm: 100 + strokeMm }), rules).finding;
  // Guard band 1.645 x 0.868 = 1.428 mm on either side of 50.8 mm.
  expect(found(49.36)?.outcome).toBe('within limit');
  expect(found(49.4)).toMatchObject({ outcome: 'not decided', reasons: [{ code: 'finding/near-limit' }] });
  expect(found(52.2)?.outcome).toBe('not decided');
  expect(found(52.24)).toMatchObject({
    outcome: 'over limit',
    notes: [{ code: 'roadside-count/counts', defectiveBrakes: 0.5 }],
  });
  expect(handResult(reading({ quantity: 'free-stroke' }), rules).finding).toBeNull();
});

test('no chamber, no limit: not decided, and why', () => {
  const limit = { ok: false, failure: { code: 'limit/chamber-unknown' } } as const;
  expect(handResult(reading(), { ruleSet: US_RULE_SET, limit }).finding).toMatchObject({
    outcome: 'not decided',
    reasons: [{ code: 'finding/limit-unknown', failure: { code: 'limit/chamber-unknown' } }],
  });
});
