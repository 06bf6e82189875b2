import { beforeAll, expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import type { Adjustment } from '../../src/adjustment/adjustment.ts';
import { derivedVariance } from '../../src/adjustment/derived.ts';
import { residualTest } from '../../src/adjustment/residual-test.ts';
import { chiSquareUpperTail } from '../../src/basics/chi-square.ts';
import { choleskyFactor, choleskySolve } from '../../src/basics/symmetric.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { simulate } from '../simulation/scene.ts';

/**
 * The same sums another way: the hat matrix J N^-1 J^T row by row, each by a solution of N x = J_i^T
 * (Baarda 1968; Foerstner, Wrobel: Photogrammetric Computer Vision, 2016, 4.6; sections from memory).
 */
type Judged = { readonly adjustment: Adjustment; readonly redundancies: readonly number[] };

function judged(sigmaPx: number, noisePx: number): Judged {
  const options = { seed: 5, reference: 'tape+band', cameraStill: true, rodMarks: true } as const;
  const problem = problemFromViews(simulate({ ...options, sigmaPx, noisePx }).input);
  if (!problem.ok) throw new Error(problem.failure.code);
  const adjusted = adjust(problem.value);
  if (!adjusted.ok) throw new Error(adjusted.failure.code);
  const adjustment = adjusted.value;
  return { adjustment, redundancies: redundanciesOf(adjustment) };
}

function rowOf({ best, layout }: Adjustment, row: number): Float64Array {
  const unit = new Float64Array(layout.size);
  return Float64Array.from({ length: layout.size }, (_, i) => {
    unit.fill(0);
    unit[i] = 1;
    return best.fitted.equations.rowDot(row, unit);
  });
}

function solved({ best, layout }: Adjustment, right: Float64Array): Float64Array {
  const lower = choleskyFactor(best.fitted.equations.normal().matrix, layout.size);
  if (!lower) throw new Error('adjusted, so not singular');
  return choleskySolve(lower, layout.size, right);
}

function redundanciesOf(adjustment: Adjustment): readonly number[] {
  const { equations } = adjustment.best.fitted;
  return Array.from(
    { length: equations.rows },
    (_, row) => 1 - equations.rowDot(row, solved(adjustment, rowOf(adjustment, row))),
  );
}

let honest: Judged;
let tooProud: Judged;

beforeAll(() => {
  honest = judged(1, 1);
  // Marks that scatter by 1 px and claim 0.7 px.
  tooProud = judged(0.7, 1);
});

test('the redundancies of all equations sum to their number less the unknowns', () => {
  const { adjustment, redundancies } = honest;
  const { rows, unknowns } = adjustment.best.fitted.equations;
  expect(sum(redundancies)).toBeCloseTo(rows - unknowns, 6);
  for (const r of redundancies) {
    expect(r).toBeGreaterThan(-1e-9);
    expect(r).toBeLessThan(1);
  }
});

test('of the two sums of squares the less likely counts, its chance doubled', () => {
  for (const { adjustment, redundancies } of [honest, tooProud]) {
    const { equations, chiSquare } = adjustment.best.fitted;
    const markRows = adjustment.markRows.flatMap(({ row }) => [row, row + 1]);
    const ofMarks = sum(markRows.map((row) => (equations.residuals[row] as number) ** 2));
    const freedom = sum(markRows.map((row) => redundancies[row] as number));
    const chances = [
      chiSquareUpperTail(chiSquare, equations.rows - equations.unknowns),
      chiSquareUpperTail(ofMarks, freedom),
    ];
    const { pValue } = residualTest(adjustment);
    expect(Math.abs(pValue / Math.min(1, 2 * Math.min(...chances)) - 1)).toBeLessThan(1e-6);
  }
});

test('honest marks are believed; marks that claim too much are not, though wide priors dilute the whole sum', () => {
  expect(residualTest(honest.adjustment).pValue).toBeGreaterThan(0.01);
  const { pValue } = residualTest(tooProud.adjustment);
  expect(pValue).toBeLessThan(0.01);
  const { equations, chiSquare } = tooProud.adjustment.best.fitted;
  expect(pValue).toBeLessThan(chiSquareUpperTail(chiSquare, equations.rows - equations.unknowns));
});

test('a mark stands by its larger residual over what of an error shows in it, largest first', () => {
  const { adjustment, redundancies } = honest;
  const { marks } = residualTest(adjustment);
  const { residuals } = adjustment.best.fitted.equations;
  expect(marks.length).toBeGreaterThan(30);
  for (const [i, { rows, standardised }] of marks.entries()) {
    const both = [rows.row, rows.row + 1]
      .filter((row) => (redundancies[row] as number) >= 0.02)
      .map((row) => Math.abs(residuals[row] as number) / Math.sqrt(redundancies[row] as number));
    expect(Math.abs(standardised / Math.max(...both) - 1)).toBeLessThan(1e-6);
    if (i > 0) expect(standardised).toBeLessThanOrEqual(marks[i - 1]?.standardised ?? 0);
  }
});

test('the variance of a derived quantity is g^T N^-1 g, and its groups sum to it', () => {
  const { adjustment } = honest;
  const { pins, camshaft } = adjustment.layout;
  const gradient = [
    { index: pins.applied as number, d: 1 },
    { index: pins.released as number, d: -1 },
    { index: camshaft as number, d: 0.5 },
  ];
  const g = new Float64Array(adjustment.layout.size);
  for (const { index, d } of gradient) g[index] = d;
  const expected = sum([...solved(adjustment, g)].map((value, i) => value * (g[i] as number)));
  const { variance, byGroup } = derivedVariance(adjustment, gradient);
  expect(Math.abs(variance / expected - 1)).toBeLessThan(1e-6);
  expect(Math.abs(sum([...byGroup.values()]) / expected - 1)).toBeLessThan(1e-6);
});

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
