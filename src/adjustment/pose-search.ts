/**
 * The minima of what one camera pose sees.
 *
 * Model    from every closed-form start a first look, the best few a short run, then the mirrored tilts of the best. Where the focal
 *          length is hardly known, the thorough search starts from a longer one as well: a picture cut out of a larger one,
 *          or a long lens.
 */
import type { Mat3 } from '../basics/rotation.ts';
import { distinct } from './distinct.ts';
import type { Effort } from './effort.ts';
import type { FitOptions } from './levenberg-marquardt.ts';
import type { Problem, ProblemView } from './problem.ts';
import { byChiSquare, rotationsOf, run, type Solution } from './run.ts';
import { type Start, startFor } from './start.ts';
import { mirroredRotations, startRotations } from './start-directions.ts';
import { distanceToObject } from './start-distance.ts';
import type { Part } from './sub-problem.ts';

export type PoseSolution = Solution & { readonly part: Part };

export const FIRST_LOOK: FitOptions = { maxIterations: 2, tolerance: 0.1 };

/** From this standard uncertainty of ln f on, a longer focal length is tried. */
const UNKNOWN_FOCAL = 0.1;
const LONGER = 2;

export function minimaOfPose(part: Part, whole: Problem, effort: Effort): readonly PoseSolution[] {
  const view = part.problem.views[0] as ProblemView;
  const from = (start: Start, options: FitOptions) => run(part.problem, part.layout, start, start.x, options);
  const found = startFocals(whole, effort)
    .flatMap((factor) => {
      const [ofPart, ofWhole] = [longer(part.problem, factor), longer(whole, factor)];
      const rotations = startRotations(ofPart, view);
      return rotations.flatMap((rotation) => startOfPose({ ...part, problem: ofPart }, ofWhole, rotation));
    })
    .map((start) => from(start, FIRST_LOOK))
    .sort(byChiSquare)
    .slice(0, effort.lookedAt)
    .map((s) => run(part.problem, part.layout, s.start, s.x, shortFit(effort)))
    .sort(byChiSquare);
  const best = found[0];
  if (!best) return [];
  const rotation = rotationsOf(part.layout, best)[0] as Mat3;
  const mirrored = mirroredRotations(part.problem, view, rotation)
    .flatMap((turned) => startOfPose(part, whole, turned))
    .map((start) => from(start, shortFit(effort)));
  const sorted = [...found, ...mirrored].sort(byChiSquare);
  return distinct(sorted, part.layout).map((solution) => ({ ...solution, part }));
}

export function shortFit(effort: Effort): FitOptions {
  return { maxIterations: effort.shortRun, tolerance: 0.05 };
}

function startOfPose(part: Part, whole: Problem, rotation: Mat3): readonly Start[] {
  const distances = distanceToObject(whole, rotation);
  if (!distances) return [];
  const own = part.viewIndexes.map((i) => distances[i] as number);
  const start = startFor(part.problem, part.layout, [rotation], own);
  return start ? [start] : [];
}

function startFocals({ cameras }: Problem, { longerFocal }: Effort): readonly number[] {
  return longerFocal && cameras.some(({ uLnFocal }) => uLnFocal > UNKNOWN_FOCAL) ? [1, LONGER] : [1];
}

function longer(problem: Problem, factor: number): Problem {
  const cameras = problem.cameras.map((camera) =>
    camera.uLnFocal > UNKNOWN_FOCAL ? { ...camera, focalPx: factor * camera.focalPx } : camera,
  );
  return { ...problem, cameras };
}
