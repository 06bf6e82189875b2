import { expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import { Curvature } from '../../src/adjustment/curvature.ts';
import { linearise } from '../../src/adjustment/linearise.ts';
import { priorRows } from '../../src/adjustment/prior-rows.ts';
import { inverseForm } from '../../src/basics/sparse-symmetric.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { simulate } from '../simulation/scene.ts';

// Half the second derivatives of the sum, times a step, are how half its slope changes along the step.
test.each(['arm-length', 'tape+band'] as const)(
  'what the curvature adds to J^T J is what the slope of the sum changes by besides: %s',
  (reference) => {
    const problem = problemFromViews(simulate({ seed: 5, reference, sigmaPx: 1, rodMarks: true }).input);
    if (!problem.ok) throw new Error(problem.failure.code);
    const adjusted = adjust(problem.value);
    if (!adjusted.ok) throw new Error(adjusted.failure.code);
    const { layout, best, factor } = adjusted.value;
    const n = layout.size;
    const priors = priorRows(problem.value, layout, best.start.x);
    const at = (x: Float64Array) => linearise(x, problem.value, layout, best.start, priors);
    const found = at(best.x);
    const curvature = new Curvature(at, best.x, factor);
    const normal = found.normal();
    const unbent = normal.matrix.slice();
    curvature.addTo(
      normal,
      found.observations.map((row) => found.residuals[row] as number),
    );
    const u = Float64Array.from(best.x, (_, i) => {
      const unit = new Float64Array(n);
      unit[i] = 1;
      return Math.sqrt(inverseForm(factor, unit));
    });
    let [off, offUnbent] = [0, 0];
    for (let j = 0; j < n; j++) {
      const h = 1e-3 * (u[j] as number);
      const slope = (by: number) => at(best.x.map((v, i) => (i === j ? v + by : v))).gradient();
      const [up, down] = [slope(h), slope(-h)];
      for (let i = j; i < n; i++) {
        const change = ((up[i] as number) - (down[i] as number)) / (2 * h);
        const inUnits = (matrix: Float64Array) =>
          (change - (matrix[i * n + j] as number)) * (u[i] as number) * (u[j] as number);
        off += inUnits(normal.matrix) ** 2;
        offUnbent += inUnits(unbent) ** 2;
      }
    }
    // In units of both standard uncertainties; without the curvature it is near 1.
    expect(Math.sqrt(offUnbent)).toBeGreaterThan(0.3);
    expect(Math.sqrt(off)).toBeLessThan(0.02);
  },
);
