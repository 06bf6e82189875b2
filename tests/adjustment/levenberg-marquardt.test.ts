import { expect, test } from 'vitest';
import { Equations } from '../../src/adjustment/equations.ts';
import {
  type FitOptions,
  type Fitted,
  levenbergMarquardt,
} from '../../src/adjustment/levenberg-marquardt.ts';
import { choleskyFactor, inverseFromLower, lowerInverse } from '../../src/basics/symmetric.ts';

// NIST Statistical Reference Datasets, nonlinear regression: Misra1a (lower difficulty), Misra1b (lower), Misra1c and Misra1d
// (average), the dental research data of D. Misra, 1978; files Misra1a.dat to Misra1d.dat: data, starts, certified values.
const PRESSURE = [
  77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0,
] as const;
const VOLUME = [
  10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78,
] as const;

type Pair = readonly [number, number];

type Dataset = {
  readonly name: string;
  /** Value and its derivatives by b1 and b2. */
  readonly model: (x: number, b1: number, b2: number) => readonly [number, number, number];
  readonly starts: readonly [Pair, Pair];
  readonly certified: Pair;
  readonly deviations: Pair;
  readonly sumOfSquares: number;
};

const DATASETS: readonly Dataset[] = [
  {
    name: 'Misra1a',
    model: (x, b1, b2) => {
      const e = Math.exp(-b2 * x);
      return [b1 * (1 - e), 1 - e, b1 * x * e];
    },
    starts: [
      [500, 1e-4],
      [250, 5e-4],
    ],
    certified: [2.3894212918e2, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    sumOfSquares: 1.2455138894e-1,
  },
  {
    name: 'Misra1b',
    model: (x, b1, b2) => {
      const q = 1 + (b2 * x) / 2;
      return [b1 * (1 - q ** -2), 1 - q ** -2, b1 * x * q ** -3];
    },
    starts: [
      [500, 1e-4],
      [300, 2e-4],
    ],
    certified: [3.3799746163e2, 3.9039091287e-4],
    deviations: [3.1643950207, 4.2547321834e-6],
    sumOfSquares: 7.5464681533e-2,
  },
  {
    name: 'Misra1c',
    model: (x, b1, b2) => {
      const q = 1 + 2 * b2 * x;
      return [b1 * (1 - q ** -0.5), 1 - q ** -0.5, b1 * x * q ** -1.5];
    },
    starts: [
      [500, 1e-4],
      [600, 2e-4],
    ],
    certified: [6.3642725809e2, 2.0813627256e-4],
    deviations: [4.6638326572, 1.7728423155e-6],
    sumOfSquares: 4.0966836971e-2,
  },
  {
    name: 'Misra1d',
    model: (x, b1, b2) => {
      const q = 1 + b2 * x;
      return [(b1 * b2 * x) / q, (b2 * x) / q, (b1 * x) / q ** 2];
    },
    starts: [
      [500, 1e-4],
      [450, 3e-4],
    ],
    certified: [4.3736970754e2, 3.0227324449e-4],
    deviations: [3.6489174345, 2.9334354479e-6],
    sumOfSquares: 5.6419295283e-2,
  },
];

/** The data are not whitened: a sum of squares of 0.1 is known to 1e-17, and the fall still to be had must come near that. */
const TIGHT: FitOptions = { maxIterations: 200, tolerance: 1e-16 };

function fitted({ model }: Dataset, start: Pair, options: FitOptions = TIGHT): Fitted {
  const evaluate = (x: Float64Array): Equations => {
    const equations = new Equations(2, { rows: VOLUME.length, entries: 2 * VOLUME.length });
    VOLUME.forEach((y, i) => {
      const [value, by1, by2] = model(PRESSURE[i] as number, x[0] as number, x[1] as number);
      equations.add(0, by1);
      equations.add(1, by2);
      equations.close(value - y, 'marks');
    });
    return equations;
  };
  return levenbergMarquardt(evaluate, new Float64Array(start), options);
}

/** Matching digits as the reference data's own comparisons count them: -log10 of the relative error. */
function matchingDigits(value: number, certified: number): number {
  return -Math.log10(Math.max(Math.abs(value / certified - 1), 1e-16));
}

const bothStarts = DATASETS.flatMap((set) =>
  set.starts.map((start, i) => ({ name: set.name, from: i + 1, set, start })),
);

// The values are certified to eleven digits; eight of the parameters and ten of the sum are asked.
test.each(bothStarts)('$name from start $from: parameters and sum of squares', ({ set, start }) => {
  const { x, chiSquare, converged } = fitted(set, start);
  expect(converged).toBe(true);
  expect(matchingDigits(x[0] as number, set.certified[0])).toBeGreaterThan(8);
  expect(matchingDigits(x[1] as number, set.certified[1])).toBeGreaterThan(8);
  expect(matchingDigits(chiSquare, set.sumOfSquares)).toBeGreaterThan(10);
});

test.each(bothStarts)('$name from start $from: standard deviations from J^T J', ({ set, start }) => {
  const { equations, chiSquare } = fitted(set, start);
  const lower = choleskyFactor(equations.normal().matrix, 2);
  if (!lower) throw new Error('two parameters that the data hold');
  const covariance = inverseFromLower(lowerInverse(lower, 2), 2);
  const residualVariance = chiSquare / (VOLUME.length - 2);
  const deviations = [covariance[0], covariance[3]].map((v) => Math.sqrt((v as number) * residualVariance));
  expect(matchingDigits(deviations[0] as number, set.deviations[0])).toBeGreaterThan(8);
  expect(matchingDigits(deviations[1] as number, set.deviations[1])).toBeGreaterThan(8);
});

test('a fit ended too early says so', () => {
  const { converged, iterations } = fitted(DATASETS[0] as Dataset, [500, 1e-4], {
    maxIterations: 3,
    tolerance: 1e-16,
  });
  expect(converged).toBe(false);
  expect(iterations).toBe(3);
});

test('a start at the minimum stays there', () => {
  const set = DATASETS[0] as Dataset;
  const best = fitted(set, set.starts[0]);
  const again = fitted(set, [best.x[0] as number, best.x[1] as number]);
  expect(again.converged).toBe(true);
  expect(again.chiSquare).toBeLessThanOrEqual(best.chiSquare);
  expect(matchingDigits(again.x[0] as number, best.x[0] as number)).toBeGreaterThan(8);
});

test('a step where the residuals are no numbers is not taken', () => {
  // sqrt(x) from far above its solution: undamped Gauss-Newton would jump below zero.
  const evaluate = (x: Float64Array): Equations => {
    const equations = new Equations(1, { rows: 1, entries: 1 });
    const root = Math.sqrt(x[0] as number);
    equations.add(0, 0.5 / root);
    equations.close(root - 0.1, 'marks');
    return equations;
  };
  const { x, converged } = levenbergMarquardt(evaluate, new Float64Array([100]), {
    maxIterations: 100,
    tolerance: 1e-20,
  });
  expect(converged).toBe(true);
  expect(x[0]).toBeCloseTo(0.01, 9);
});

test('an unknown that no equation holds ends the fit without convergence', () => {
  const evaluate = (x: Float64Array) => {
    const equations = new Equations(2, { rows: 1, entries: 1 });
    equations.add(0, 1);
    equations.close((x[0] as number) - 3, 'marks');
    return equations;
  };
  expect(levenbergMarquardt(evaluate, new Float64Array([0, 7])).converged).toBe(false);
});
