import { expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import { hasLooseTilt } from '../../src/adjustment/loose-tilt.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type SceneOptions, simulate } from '../simulation/scene.ts';

function isLoose(options: Partial<SceneOptions>, without?: string): boolean {
  const { input } = simulate({ seed: 4, reference: 'tape', sigmaPx: 1, ...options });
  const views = input.views.map((view) => ({
    ...view,
    marks: view.marks.filter(({ kind }) => kind !== without),
  })) satisfies MeasureInput['views'];
  const problem = problemFromViews({ ...input, views });
  if (!problem.ok) throw new Error(problem.failure.code);
  const adjusted = adjust(problem.value);
  if (!adjusted.ok) throw new Error(adjusted.failure.code);
  return hasLooseTilt(adjusted.value);
}

test('an arm length alone leaves the direction of view loose, graduations or a rim do not', () => {
  expect(isLoose({ reference: 'arm-length' })).toBe(true);
  expect(isLoose({})).toBe(false);
  expect(isLoose({ reference: 'clamp-band' })).toBe(false);
});

test('without the camshaft’s end the brake may be turned about its axis: lengths along it are as well known', () => {
  expect(isLoose({ reference: 'tape+band' }, 'camshaft-end')).toBe(false);
});
