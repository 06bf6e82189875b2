import { expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import type { Problem } from '../../src/adjustment/problem.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { anyScene } from '../simulation/any-scene.ts';
import type { ReferenceKind } from '../simulation/scene.ts';
import { trueMinimum } from '../simulation/true-minimum.ts';

/** Higher than the minimum beside the truth by more than this, and a minimum was missed that tells by its likelihood. */
const MISSED_BY = 0.5;

/** Scenes in which a search that tried less ended in a wrong minimum, most of them with residuals that looked well. */
const ONCE_MISSED: readonly (readonly [ReferenceKind, number, string])[] = [
  ['distance+arm', 81, 'both directions of view mirrored, residuals as good as can be'],
  ['distance+arm', 37, 'camera thought at a third of its distance'],
  ['distance+arm', 73, 'a combination of minima far down the list'],
  ['arm-length', 73, 'stroke 45 mm off'],
  ['arm-length', 33, 'every quick start wrong'],
  ['distance', 41, 'mirrored'],
  ['tape+distance', 70, 'the known distance tilted the other way'],
  ['tape+distance', 33, 'focal length twice what is usual, not told'],
  ['tape+arm', 49, 'focal length twice what is usual, not told'],
  ['target+arm', 24, 'seen at 56 degrees off square'],
  ['target+band', 25, 'no residual of a mark tells, but a depth four standard uncertainties off'],
  ['distance+band', 43, 'no residual of a mark tells, but a depth four standard uncertainties off'],
  ['clamp-band', 59, 'every quick start wrong'],
];

test.each(ONCE_MISSED)('finds the minimum beside the truth: %s, seed %i (%s)', (kind, seed) => {
  expect(missedBy(kind, seed)).toBeLessThan(MISSED_BY);
});

function missedBy(kind: ReferenceKind, seed: number): number {
  const scene = anyScene(kind, seed);
  const problem = problemOf(scene.input);
  const found = adjust(problem);
  const beside = trueMinimum(scene, problem);
  if (!found.ok || !beside) throw new Error('no minimum to compare');
  return found.value.best.fitted.chiSquare - beside.fitted.chiSquare;
}

function problemOf(input: Parameters<typeof problemFromViews>[0]): Problem {
  const problem = problemFromViews(input);
  if (!problem.ok) throw new Error(problem.failure.code);
  return problem.value;
}
