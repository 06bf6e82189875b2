import { expect, test } from 'vitest';
import { layoutOf } from '../../src/adjustment/layout.ts';
import { rebased } from '../../src/adjustment/run.ts';
import { facingAngle, turnedBy } from '../../src/adjustment/start-band.ts';
import { unfoldBand } from '../../src/adjustment/unfold-band.ts';
import type { Mat3 } from '../../src/basics/rotation.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { anyScene } from '../simulation/any-scene.ts';
import { trueMinimum } from '../simulation/true-minimum.ts';

/** A step of the grid of angles. */
const NEAR_RAD = 0.07;

const HALFWAY_RAD = 1;

/** A clamp band at its minimum, and the angle of a rim mark halfway from the facing side to the end of the ellipse. */
function bandAtMinimum(seed: number) {
  const scene = anyScene('clamp-band', seed);
  const problem = problemFromViews(scene.input);
  if (!problem.ok) throw new Error(problem.failure.code);
  const layout = layoutOf(problem.value);
  const found = trueMinimum(scene, problem.value);
  if (!found) throw new Error('no minimum');
  const start = rebased(layout, found);
  const at = layout.poses[0] as number;
  const [x, y, z] = [start.x[at + 3] as number, start.x[at + 4] as number, start.x[at + 5] as number];
  const facing = facingAngle(start.rotations[0] as Mat3, [x, y, z]);
  const off = (place: number) => turnedBy(start.x[place] as number, facing);
  const view = problem.value.views[0];
  const rim = (view?.marks ?? []).flatMap(({ id, kind }) =>
    kind === 'clamp-band' ? [layout.nuisance.get(id) as number] : [],
  );
  const fromMiddle = (place: number) => Math.abs(Math.abs(off(place)) - HALFWAY_RAD);
  const place = rim.reduce((a, b) => (fromMiddle(a) < fromMiddle(b) ? a : b));
  return { problem: problem.value, layout, start, place, off };
}

test.each([1, 2, 3])('a mark on the far half comes back to the near one: seed %i', (seed) => {
  const { problem, layout, start, place, off } = bandAtMinimum(seed);
  const before = off(place);
  // As far beyond the end of the ellipse as it was before it.
  start.x[place] = (start.x[place] as number) + Math.sign(before) * (Math.PI - 2 * Math.abs(before));
  expect(Math.abs(off(place) - before)).toBeGreaterThan(2 * NEAR_RAD);
  expect(unfoldBand(start.x, problem, layout, start, Math.PI / 2)).toBeGreaterThan(0);
  expect(Math.abs(off(place) - before)).toBeLessThan(NEAR_RAD);
});

test('marks that are where they belong stay', () => {
  const { problem, layout, start } = bandAtMinimum(1);
  const before = new Float64Array(start.x);
  unfoldBand(start.x, problem, layout, start, Math.PI);
  for (const place of layout.nuisance.values())
    expect(start.x[place] as number).toBeCloseTo(before[place] as number, 1);
});
