import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import { trialsOf } from '../../src/measurement/monte-carlo.ts';
import type { TrialResult } from '../../src/measurement/monte-carlo-joined.ts';
import { widenedBy } from '../../src/measurement/monte-carlo-widened.ts';
import { simulate } from '../simulation/scene.ts';

const { input } = simulate({ seed: 3, reference: 'tape', sigmaPx: 1, rodMarks: true });
const [measured, drawn] = [measure(input), trialsOf(input, { trials: 150, seed: 1 })];
if (!measured.ok || !drawn.ok) throw new Error('not measured');
const stated = measured.value;
const strokeBy = (largerU95: number) => {
  const strokeMm = { ...drawn.value.results.strokeMm, largerU95 } as TrialResult;
  return widenedBy(stated, { ...drawn.value, results: { ...drawn.value.results, strokeMm } });
};

test('a larger U widens u, U and the budget alike, and nothing else', () => {
  const { strokeMm, straightLineChangeMm, fit } = strokeBy(2 * stated.strokeMm.U95);
  expect(strokeMm.value).toBe(stated.strokeMm.value);
  expect(strokeMm.U95).toBeCloseTo(2 * stated.strokeMm.U95, 9);
  expect(strokeMm.u).toBeCloseTo(2 * stated.strokeMm.u, 9);
  expect(Math.hypot(...strokeMm.budget.map(({ u }) => u))).toBeCloseTo(strokeMm.u, 6);
  expect(straightLineChangeMm).toEqual(stated.straightLineChangeMm);
  expect(fit).toEqual(stated.fit);
});

test('where the trials bear the stated U out, it stays', () => {
  expect(strokeBy(stated.strokeMm.U95).strokeMm.U95).toBeCloseTo(stated.strokeMm.U95, 12);
});
