/** The edge of the tape as a plumb line, on simulated pictures of a wide lens with the brake in a corner. Tables: docs/tape-edge.md. */
import { expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import { derivedVariance } from '../../src/adjustment/derived.ts';
import { measure } from '../../src/measurement/measure.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type Scene, simulate } from '../simulation/scene.ts';

const SEEDS = [1, 2, 3];

const scene = (seed: number, edgePoints: number) =>
  simulate({
    ...{ seed, reference: 'tape+band', sigmaPx: 0.25, edgePoints, edgeSigmaPx: 0.15 },
    ...{ focalOverWidth: [0.35, 0.5], distanceMm: [300, 600], k1Scatter: 0.06, aside: [0.3, 0.3] },
    ...{ tapeUnmoved: true, touchesPin: true },
  });

function lensOf({ input, k1 }: Scene) {
  const problem = problemFromViews(input);
  const adjusted = problem.ok ? adjust(problem.value) : problem;
  if (!adjusted.ok) throw new Error(adjusted.failure.code);
  const { layout, best } = adjusted.value;
  const at = (layout.cameras[0] as number) + 3;
  const { variance } = derivedVariance(adjusted.value, [{ index: at, d: 1 }]);
  return { off: Math.abs((best.x[at] as number) - k1), u: Math.sqrt(variance) };
}

test('the lens is known better with it than without', () => {
  const [without, having] = [0, 10].map((points) => SEEDS.map((seed) => lensOf(scene(seed, points))));
  if (!without || !having) throw new Error('two of each');
  having.forEach(({ u, off }, i) => {
    expect(u).toBeLessThan(0.95 * (without[i]?.u ?? 0));
    expect(off).toBeLessThan(3 * u);
  });
});

test('without a tape its marks are passed over, without graduations on that picture too', () => {
  const { input } = scene(1, 6);
  const tapeless = measure({ ...input, references: { ...input.references, tape: null } });
  const stripped = input.views.map((view) => ({
    ...view,
    marks: view.marks.filter(({ kind }) => kind !== 'tape-edge'),
  }));
  const bare = measure({ ...input, views: stripped, references: { ...input.references, tape: null } });
  if (!tapeless.ok || !bare.ok) throw new Error('measured by the band');
  expect(tapeless.value.strokeMm.value).toBeCloseTo(bare.value.strokeMm.value, 6);
  const [released, applied] = input.views;
  if (!released || !applied) throw new Error('two views');
  const noGraduations = applied.marks.filter(({ kind }) => kind !== 'tape-graduation');
  const measured = measure({ ...input, views: [released, { ...applied, marks: noGraduations }] });
  expect(measured.ok && measured.value.strokeMm.U95).toBeGreaterThan(0);
});
