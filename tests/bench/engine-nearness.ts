/** How far the trials' strokes are from those of the same trials followed to their minimum, in the scatter of the latter. */
import { adjust } from '../../src/adjustment/adjust.ts';
import { displacedFit } from '../../src/adjustment/displaced.ts';
import { drawFrom } from '../../src/basics/random.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { axialTravel } from '../../src/measurement/quantities.ts';

const DRAWS = 100;
/** Fall of the sum that is left: beyond what a stroke shows. */
const FOLLOWED_TO = 1e-9;

export function trialsOff(inputs: readonly MeasureInput[]): readonly number[] {
  return inputs.flatMap(offsOf);
}

function offsOf(input: MeasureInput): readonly number[] {
  const problem = problemFromViews(input);
  if (!problem.ok) throw new Error(problem.failure.code);
  const adjusted = adjust(problem.value);
  if (!adjusted.ok) throw new Error(adjusted.failure.code);
  const [usual, followed] = [displacedFit(adjusted.value), displacedFit(adjusted.value, FOLLOWED_TO)];
  const draw = drawFrom(1);
  const strokeMm = (x: Float64Array) => axialTravel(x, adjusted.value.layout, 'applied').value;
  const pairs: { readonly endMm: number; readonly minimumMm: number }[] = [];
  for (let trial = 0; trial < DRAWS; trial++) {
    const displacements = Float64Array.from({ length: usual.observations }, () => draw.normal(0, 1));
    const [end, minimum] = [usual.solve(displacements), followed.solve(displacements)];
    if (end && minimum) pairs.push({ endMm: strokeMm(end), minimumMm: strokeMm(minimum) });
  }
  const meanMm = pairs.reduce((sum, { minimumMm }) => sum + minimumMm, 0) / pairs.length;
  const scatterMm = Math.sqrt(
    pairs.reduce((sum, { minimumMm }) => sum + (minimumMm - meanMm) ** 2, 0) / pairs.length,
  );
  return pairs.map(({ endMm, minimumMm }) => Math.abs(endMm - minimumMm) / scatterMm);
}
