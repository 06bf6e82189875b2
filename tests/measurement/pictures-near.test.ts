import { expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import { apartRad } from '../../src/adjustment/apart.ts';
import type { Problem } from '../../src/adjustment/problem.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type SceneOptions, simulate } from '../simulation/scene.ts';

function inputOf(options: Partial<SceneOptions>): MeasureInput {
  return simulate({ seed: 3, reference: 'arm-length', sigmaPx: 1, ...options }).input;
}

function problemOf(input: MeasureInput): Problem {
  const problem = problemFromViews(input);
  if (!problem.ok) throw new Error(problem.failure.code);
  return problem.value;
}

const placesOf = (options: Partial<SceneOptions>) => problemOf(inputOf(options)).places;

test('two pictures whose only scale is an arm or a distance are taken for near each other', () => {
  expect(placesOf({})).toBe('near');
  expect(placesOf({ reference: 'distance' })).toBe('near');
});

test('pictures that show their directions themselves, or from a tripod are not; frames of a clip are filmed by one hand', () => {
  for (const reference of ['tape', 'clamp-band', 'target', 'tape+arm'] as const)
    expect(placesOf({ reference })).toBe('own');
  expect(placesOf({ cameraStill: true })).toBe('own');
  const input = inputOf({});
  expect(problemOf({ ...input, sideViews: input.views.slice(1) }).places).toBe('filmed');
});

test('found far apart, pictures are adjusted each for itself; found near, they stay so', () => {
  // Of one wheel end, 48 degrees apart.
  const options = {
    sigmaPx: 0.5,
    rodMarks: true,
    typical: true,
    strokeMm: 45,
    hand: 1,
    offSquareDeg: 35,
  } as const;
  const [one, other] = [1, 2].map((seed) => inputOf({ ...options, seed }));
  const views = [one?.views[0], other?.views[1]].flatMap((view, i) =>
    view ? [{ ...view, marks: view.marks.map((mark) => ({ ...mark, id: `${i}-${mark.id}` })) }] : [],
  );
  const [far, near] = [{ ...inputOf({}), views }, inputOf({})].map((input) => adjust(problemOf(input)));
  if (!far?.ok || !near?.ok) throw new Error('both have a minimum');
  expect(far.value.problem.places).toBe('own');
  expect(near.value.problem.places).toBe('near');
  expect(apartRad(near.value)).toBeLessThan(0.2);
  expect(apartRad(far.value)).toBeGreaterThan(0.2);
});
