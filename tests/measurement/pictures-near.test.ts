import { expect, test } from 'vitest';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type SceneOptions, simulate } from '../simulation/scene.ts';

function areNear(
  options: Partial<SceneOptions>,
  change: (input: MeasureInput) => MeasureInput = (same) => same,
) {
  const { input } = simulate({ seed: 3, reference: 'arm-length', sigmaPx: 1, ...options });
  const problem = problemFromViews(change(input));
  if (!problem.ok) throw new Error(problem.failure.code);
  return problem.value.areNear;
}

test('two pictures whose only scale is an arm or a distance are taken for near each other', () => {
  expect(areNear({})).toBe(true);
  expect(areNear({ reference: 'distance' })).toBe(true);
});

test('pictures that show their directions themselves, from a tripod, or with frames of a clip are not', () => {
  for (const reference of ['tape', 'clamp-band', 'target', 'tape+arm'] as const)
    expect(areNear({ reference })).toBe(false);
  expect(areNear({ cameraStill: true })).toBe(false);
  expect(areNear({}, (input) => ({ ...input, sideViews: input.views.slice(1) }))).toBe(false);
});
