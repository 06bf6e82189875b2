/**
 * The propagation of uncertainty (derived.ts) and the solver against worked examples of the Guide.
 *
 * Source   JCGM 100:2008 (GUM), annex H.1, H.2, H.3. Inputs and results read in the documentation and examples of the library
 *          GTC (repository MSLNZ/GTC: docs/API/GUM_H1.rst to GUM_H3.rst, examples/GUM_H1.py), which reproduce them. From memory:
 *          table H.2's five readings; the third digit of u and r in H.2 (u 0.071, 0.295, 0.236; r -0.588, -0.485, 0.993), the
 *          first two of which GTC confirms; the components of H.1 as the Guide rounds them; s of H.3.
 * Not      degrees of freedom and the expanded uncertainties made from them: our U95 is 1.96 u and knows no Student's t.
 *          Second-order terms: see the last test of H.1.
 */
import { describe, expect, test } from 'vitest';
import type { BudgetGroup } from '../../src/adjustment/budget-group.ts';
import { levenbergMarquardt } from '../../src/adjustment/levenberg-marquardt.ts';
import { choleskyFactor, lowerInverse } from '../../src/basics/symmetric.ts';
import { add, cos, type Dual, div, mul, sin, sub, unknowns } from './dual.ts';
import { correlation, equationsOf, propagated } from './small-adjustment.ts';

/** Inputs that are known independently: one row each, in a group of its own where the budget is asked for. */
function independent(inputs: readonly { readonly u: number; readonly group: BudgetGroup }[]) {
  const rows = inputs.map(({ u, group }, i) => ({
    d: inputs.map((_, k) => (k === i ? 1 / u : 0)),
    residual: 0,
    group,
  }));
  return equationsOf(inputs.length, rows);
}

describe('H.1, calibration of an end gauge: l = ls + d - ls (da t + as dt), nm', () => {
  // ls; d: mean of the differences, random and systematic error of the comparator; as, da per degree; t mean and cycle; dt.
  const inputs: readonly { readonly x: number; readonly u: number; readonly group: BudgetGroup }[] = [
    { x: 50_000_623, u: 25, group: 'tape' },
    { x: 215, u: 5.8, group: 'marks' },
    { x: 0, u: 3.9, group: 'marks' },
    { x: 0, u: 6.7, group: 'marks' },
    { x: 11.5e-6, u: 2e-6 / Math.sqrt(3), group: 'camera' },
    { x: 0, u: 1e-6 / Math.sqrt(3), group: 'distance' },
    { x: -0.1, u: 0.2, group: 'camera' },
    { x: 0, u: 0.5 / Math.sqrt(2), group: 'camera' },
    { x: 0, u: 0.05 / Math.sqrt(3), group: 'depth' },
  ];
  const [ls, d0, d1, d2, alpha, byAlpha, mean, cycle, byTheta] = unknowns(inputs.map(({ x }) => x)) as [
    Dual,
    Dual,
    Dual,
    Dual,
    Dual,
    Dual,
    Dual,
    Dual,
    Dual,
  ];
  const theta = add(mean, cycle);
  const length = sub(add(ls, d0, d1, d2), mul(ls, add(mul(byAlpha, theta), mul(alpha, byTheta))));
  const { u, byGroup } = propagated(independent(inputs), length.d);
  const part = (group: BudgetGroup): number => Math.sqrt(byGroup.get(group) ?? Number.NaN);

  test('l = 50.000 838 mm, combined standard uncertainty 32 nm', () => {
    expect(length.v).toBeCloseTo(50_000_838, 6);
    expect(Math.round(u)).toBe(32);
  });

  test('components 25, 9.7, 2.9 and 16.6 nm; none from the temperature and the expansion themselves', () => {
    expect(part('tape')).toBeCloseTo(25, 3);
    expect(part('marks')).toBeCloseTo(9.7, 1);
    expect(part('distance')).toBeCloseTo(2.9, 1);
    expect(part('depth')).toBeCloseTo(16.6, 1);
    expect(part('camera')).toBe(0);
  });

  // H.1.7 adds ls u(da) u(t) = 11.7 nm and ls u(as) u(dt) = 1.7 nm and comes to 34 nm. The engine propagates to first order.
  test('the second-order 34 nm is not ours: first order leaves out 11.7 and 1.7 nm', () => {
    const uTheta = Math.hypot(0.2, 0.5 / Math.sqrt(2));
    const [first, second] = [
      ls.v * (1e-6 / Math.sqrt(3)) * uTheta,
      ls.v * (2e-6 / Math.sqrt(3)) * (0.05 / Math.sqrt(3)),
    ];
    expect(first).toBeCloseTo(11.7, 1);
    expect(second).toBeCloseTo(1.7, 1);
    expect(Math.round(Math.hypot(u, first, second))).toBe(34);
    expect(Math.round(u)).not.toBe(34);
  });
});

describe('H.2, resistance and reactance measured at once', () => {
  const READINGS = [
    [5.007, 4.994, 5.005, 4.99, 4.999],
    [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3],
    [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
  ] as const;

  /** Rows of L^-1 with L L^T the covariance: inputs that are correlated, as the engine can hold them. */
  function correlated(covariance: readonly number[]) {
    const lower = choleskyFactor(new Float64Array(covariance), 3);
    if (!lower) throw new Error('a covariance');
    const inverse = lowerInverse(lower, 3);
    const rows = [0, 1, 2].map((i) => ({
      d: [...inverse.subarray(3 * i, 3 * i + 3)],
      residual: 0,
      group: 'marks' as const,
    }));
    return equationsOf(3, rows);
  }

  function impedance(means: readonly number[]) {
    const [v, i, phi] = unknowns(means) as [Dual, Dual, Dual];
    const z = div(v, i);
    return { r: mul(z, cos(phi)), x: mul(z, sin(phi)), z };
  }

  test('from the published means, u and r, rounded as they are', () => {
    const u = [3.2e-3, 9.5e-6, 7.5e-4];
    const r = [1, -0.36, 0.86, -0.36, 1, -0.65, 0.86, -0.65, 1];
    const equations = correlated(r.map((c, k) => c * (u[Math.floor(k / 3)] ?? 0) * (u[k % 3] ?? 0)));
    const q = impedance([4.999, 19.661e-3, 1.04446]);
    expect(q.r.v).toBeCloseTo(127.732, 3);
    expect(q.x.v).toBeCloseTo(219.847, 3);
    expect(q.z.v).toBeCloseTo(254.26, 3);
    expect(propagated(equations, q.r.d).u).toBeCloseTo(0.07, 2);
    expect(propagated(equations, q.x.d).u).toBeCloseTo(0.3, 2);
    expect(propagated(equations, q.z.d).u).toBeCloseTo(0.24, 2);
    expect(correlation(equations, q.r, q.x)).toBeCloseTo(-0.59, 2);
    expect(correlation(equations, q.r, q.z)).toBeCloseTo(-0.49, 2);
    expect(correlation(equations, q.x, q.z)).toBeCloseTo(0.99, 2);
  });

  test('from the five readings: u(R) 0.071, u(X) 0.295, u(Z) 0.236; r -0.588, -0.485, 0.993', () => {
    const means = READINGS.map((set) => set.reduce((sum, v) => sum + v, 0) / 5);
    const covariance = READINGS.flatMap((a, i) =>
      READINGS.map(
        (b, j) =>
          a.reduce(
            (sum, _, k) => sum + ((a[k] ?? 0) - (means[i] ?? 0)) * ((b[k] ?? 0) - (means[j] ?? 0)),
            0,
          ) / 20,
      ),
    );
    const equations = correlated(covariance);
    const q = impedance(means);
    expect(q.r.v).toBeCloseTo(127.732, 3);
    expect(q.x.v).toBeCloseTo(219.847, 3);
    expect(q.z.v).toBeCloseTo(254.26, 3);
    expect(propagated(equations, q.r.d).u).toBeCloseTo(0.071, 3);
    // The Guide takes 0.295 from the five X themselves (0.29549); by propagation it is 0.29558, which rounds the other way.
    expect(Math.abs(propagated(equations, q.x.d).u - 0.295)).toBeLessThan(0.001);
    expect(propagated(equations, q.z.d).u).toBeCloseTo(0.236, 3);
    expect(correlation(equations, q.r, q.x)).toBeCloseTo(-0.588, 3);
    expect(correlation(equations, q.r, q.z)).toBeCloseTo(-0.485, 3);
    expect(correlation(equations, q.x, q.z)).toBeCloseTo(0.993, 3);
  });
});

describe('H.3, calibration of a thermometer: b = y1 + y2 (t - 20)', () => {
  const T = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const B = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];

  /** Fitted with the scatter s of one reading: unknown at first, then from the residuals. */
  function fitted(s: number) {
    const evaluate = (x: Float64Array) =>
      equationsOf(
        2,
        T.map((t, i) => ({
          d: [1 / s, (t - 20) / s],
          residual: ((x[0] as number) + (x[1] as number) * (t - 20) - (B[i] as number)) / s,
          group: 'marks' as const,
        })),
      );
    return levenbergMarquardt(evaluate, new Float64Array(2), { maxIterations: 50, tolerance: 1e-20 });
  }
  const s = 1e-3 * Math.sqrt(fitted(1e-3).chiSquare / (T.length - 2));
  const { x, equations } = fitted(s);
  const at = (t: number): readonly number[] => [1, t - 20];

  test('sum of squared residuals 0.000 110 096 583 and s = 0.0035', () => {
    expect(s ** 2 * (T.length - 2)).toBeCloseTo(0.000110096583, 12);
    expect(s).toBeCloseTo(0.0035, 4);
  });

  test('y1 = -0.1712 with u 0.0029, y2 = 0.00218 with u 0.00067, r = -0.930', () => {
    expect(x[0]).toBeCloseTo(-0.1712037901, 8);
    expect(x[1]).toBeCloseTo(0.0021826977399, 10);
    expect(propagated(equations, [1, 0]).u).toBeCloseTo(0.0029, 4);
    expect(propagated(equations, [0, 1]).u).toBeCloseTo(0.0006679387732, 9);
    const [y1, y2] = unknowns(x) as [Dual, Dual];
    expect(correlation(equations, y1, y2)).toBeCloseTo(-0.93, 3);
  });

  test('correction at 30 degrees -0.1494 with u 0.0041', () => {
    const correction = (x[0] as number) + (x[1] as number) * 10;
    expect(correction).toBeCloseTo(-0.1494, 4);
    expect(propagated(equations, at(30)).u).toBeCloseTo(0.0041, 4);
  });
});
