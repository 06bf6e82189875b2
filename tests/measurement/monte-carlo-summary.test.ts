/**
 * Worked examples of JCGM 101:2008 with their published figures (models and figures from memory), run through the same summary
 * and agreement as the app's trials. Bounds: four standard errors of the trials' figure and half of the last printed digit.
 */
import { expect, test } from 'vitest';
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { agreementOf, numericalTolerance } from '../../src/measurement/monte-carlo-agreement.ts';
import { summaryOf, type TrialSummary } from '../../src/measurement/monte-carlo-summary.ts';

const TRIALS = 200_000;
const K95 = 1.96;

function trials(seed: number, model: (draw: Draw) => number, count = TRIALS): TrialSummary {
  const draw = drawFrom(seed);
  return summaryOf(Float64Array.from({ length: count }, () => model(draw)));
}

function near(found: number, published: number, error: number, lastDigit: number): void {
  expect(Math.abs(found - published)).toBeLessThan(4 * error + lastDigit / 2);
}

/** Of an end at 2.5 %: 2.7 u / sqrt(count) for a normal distribution, more where the tail is longer. */
const endError = ({ u, trials: count }: TrialSummary): number => (2.7 * u) / Math.sqrt(count);
const linear = (value: number, u: number) => ({ value, u, U95: K95 * u });
/** Rectangular with standard deviation 1. */
const rectangle = (draw: Draw): number => draw.uniform(-Math.sqrt(3), Math.sqrt(3));

test('additive model of four normal inputs (9.2.2): u = 2.0, [-3.92, 3.92], the linear value holds', () => {
  const result = trials(1, (d) => d.normal(0, 1) + d.normal(0, 1) + d.normal(0, 1) + d.normal(0, 1));
  near(result.mean, 0, 2 / Math.sqrt(TRIALS), 0);
  near(result.u, 2, 2 / Math.sqrt(2 * TRIALS), 0);
  near(result.symmetric.low, -3.92, endError(result), 0.01);
  near(result.symmetric.high, 3.92, endError(result), 0.01);
  expect(agreementOf(linear(0, 2), result, { digits: 2 }).agree).toBe(true);
});

test('additive model of four rectangles (9.2.3): u = 2.0, [-3.88, 3.88]', () => {
  const result = trials(2, (d) => rectangle(d) + rectangle(d) + rectangle(d) + rectangle(d));
  near(result.u, 2, 2 / Math.sqrt(2 * TRIALS), 0);
  near(result.symmetric.low, -3.88, endError(result), 0.01);
  near(result.symmetric.high, 3.88, endError(result), 0.01);
});

test('one rectangle ten times the others (9.2.4): u = 10.1, [-17.0, 17.0], the linear ±19.8 does not hold', () => {
  const result = trials(3, (d) => rectangle(d) + rectangle(d) + rectangle(d) + 10 * rectangle(d));
  near(result.u, 10.1, 10.1 / Math.sqrt(2 * TRIALS), 0.1);
  near(result.symmetric.low, -17, endError(result), 0.1);
  near(result.symmetric.high, 17, endError(result), 0.1);
  const agreement = agreementOf(linear(0, Math.sqrt(103)), result, { digits: 2 });
  expect(agreement.agree).toBe(false);
  expect(agreement.highOff).toBeGreaterThan(2.5);
});

test('mass calibration (9.3): mean 1.2341 mg, u 0.0754 mg, [1.0834, 1.3825] mg; first order does not hold, higher orders do', () => {
  const airReference = 1.2;
  const result = trials(4, (d) => {
    const mass = d.normal(100_000, 0.05) + d.normal(1.234, 0.02);
    const [air, weight, reference] = [d.uniform(1.1, 1.3), d.uniform(7000, 9000), d.uniform(7950, 8050)];
    return mass * (1 + (air - airReference) * (1 / weight - 1 / reference)) - 100_000;
  });
  near(result.mean, 1.2341, 0.0754 / Math.sqrt(TRIALS), 0.0001);
  // Flatter than a normal distribution: the standard error of u is no larger than that of one.
  near(result.u, 0.0754, 0.0754 / Math.sqrt(2 * TRIALS), 0.0001);
  near(result.symmetric.low, 1.0834, endError(result), 0.0001);
  near(result.symmetric.high, 1.3825, endError(result), 0.0001);
  expect(numericalTolerance(0.0539, 1)).toBeCloseTo(0.005, 12);
  const firstOrder = agreementOf(linear(1.234, 0.0539), result);
  expect(firstOrder.agree).toBe(false);
  near(firstOrder.lowOff, 0.0451, endError(result), 0.0001);
  near(firstOrder.highOff, -0.043, endError(result), 0.0001);
  expect(agreementOf(linear(1.234, 0.075), result).agree).toBe(true);
});

test('of a skewed distribution the shortest interval is another than the symmetric one', () => {
  // Exponential: quantile -ln(1 - p); its density falls from 0 on, so the shortest interval begins there.
  const result = trials(5, (d) => -Math.log(d.uniform(0, 1)));
  near(result.symmetric.low, -Math.log(0.975), 1e-3, 0);
  near(result.symmetric.high, -Math.log(0.025), endError(result), 0);
  expect(result.shortest.low).toBeLessThan(0.01);
  near(result.shortest.high, -Math.log(0.05), endError(result), 0);
});

test('trials of what is stated agree with it, whatever their number', () => {
  const stated = linear(0, 0.94);
  const disagreeing = Array.from({ length: 300 }, (_, i) =>
    agreementOf(
      stated,
      trials(100 + i, (d) => d.normal(0, 0.94), 1000),
    ),
  ).filter(({ agree }) => !agree).length;
  // Two ends, each off by more than two standard errors and the tolerance of half a tenth: under 1 in 100.
  expect(disagreeing).toBeLessThan(9);
});

test('a scatter far wider than stated never agrees, however few trials tell of it', () => {
  const heavy = trials(7, (d) => d.normal(0, 1) / Math.abs(d.normal(0, 1)), 400);
  expect(agreementOf(linear(0, 1), heavy).agree).toBe(false);
});

test('the histogram counts every trial but the rare ones at either side', () => {
  const { histogram } = trials(6, (d) => d.normal(10, 2), 10_000);
  expect(histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(9980);
  const peak = histogram.counts.indexOf(Math.max(...histogram.counts));
  expect(Math.abs(histogram.low + (peak + 0.5) * histogram.binWidth - 10)).toBeLessThan(1);
});

test.each([
  [0.000_35, 2, 0.000_005],
  [0.000_35, 1, 0.000_05],
  [2, 2, 0.05],
  [0.0999, 1, 0.05],
])('tolerance of u = %f with %i digits is %f', (u, digits, tolerance) => {
  expect(numericalTolerance(u, digits) / tolerance).toBeCloseTo(1, 9);
});
