import { expect, test } from 'vitest';
import { layoutOf } from '../../src/adjustment/layout.ts';
import { linearise } from '../../src/adjustment/linearise.ts';
import { priorRows } from '../../src/adjustment/prior-rows.ts';
import { startFor } from '../../src/adjustment/start.ts';
import { startRotations } from '../../src/adjustment/start-directions.ts';
import { distanceToObject } from '../../src/adjustment/start-distance.ts';
import { TAPE_BOW } from '../../src/adjustment/tape-point.ts';
import { drawFrom } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';

const kinds: readonly ReferenceKind[] = [
  'tape',
  'target',
  'clamp-band',
  'arm-length',
  'distance',
  'tape+band',
];

test.each(kinds.flatMap((reference) => [true, false].map((still) => [reference, still] as const)))(
  'every derivative equals the numeric one: %s, camera still: %s',
  (reference, cameraStill) => {
    const scene = simulate({
      seed: 11,
      reference,
      sigmaPx: 0.5,
      cameraStill,
      rodMarks: true,
      anyRoll: true,
      tiePoints: 3,
      edgePoints: 4,
      touchesPin: true,
      pinEndKnown: true,
      profile: cameraStill,
    });
    const problem = problemFromViews({ ...scene.input, views: endsFoundAgain(scene.input.views) });
    if (!problem.ok) throw new Error(problem.failure.code);
    const layout = layoutOf(problem.value);
    const rotation = startRotations(problem.value, problem.value.views[0] as never)[0] as never;
    const rotations = Array.from({ length: problem.value.poseCount }, () => rotation);
    const start = startFor(
      problem.value,
      layout,
      rotations,
      distanceToObject(problem.value, rotation) as never,
    );
    if (!start) throw new Error('no start');
    const draw = drawFrom(5);
    // Away from the start, so that rotation vectors, distortion and slacks are not zero, nor are a tape's bows.
    const x = start.x.map((value) => value * (1 + draw.normal(0, 0.01)) + draw.normal(0, 0.01));
    for (const at of layout.tapes) if (at !== null) x.set([2, -1], at + TAPE_BOW);
    const priors = priorRows(problem.value, layout, start.x);
    const at = (point: Float64Array) =>
      linearise(new Float64Array(point), problem.value, layout, start, priors);
    const equations = at(x);
    const dense = Array.from({ length: equations.rows }, (_, row) =>
      Array.from({ length: layout.size }, (_c, i) => equations.rowDot(row, unit(layout.size, i))),
    );
    let worst = 0;
    for (let i = 0; i < layout.size; i++) {
      const step = 1e-5 * Math.max(1, Math.abs(x[i] as number));
      const [up, down] = [at(moved(x, i, step)), at(moved(x, i, -step))];
      for (let row = 0; row < equations.rows; row++) {
        const numeric = ((up.residuals[row] as number) - (down.residuals[row] as number)) / (2 * step);
        const analytic = dense[row]?.[i] as number;
        const off = Math.abs(numeric - analytic) / (1 + Math.abs(numeric));
        worst = Math.max(worst, off);
        if (off > 1e-5)
          throw new Error(`row ${row} (${equations.groups[row]}), unknown ${i}: ${analytic} for ${numeric}`);
      }
    }
    expect(worst).toBeLessThan(1e-5);
  },
);

/** Pin and camshaft beside those of the first view. */
function endsFoundAgain([first, ...others]: readonly View[]): readonly View[] {
  if (!first) return [];
  const seedOf = ({ kind }: Mark) =>
    kind === 'clevis-pin' || kind === 'camshaft-end'
      ? first.marks.find((mark) => mark.kind === kind)
      : undefined;
  const from = (mark: Mark): Mark => {
    const seed = seedOf(mark);
    return seed ? { ...mark, followedFrom: seed.id } : mark;
  };
  return [first, ...others.map((view) => ({ ...view, marks: view.marks.map(from) }))];
}

function unit(n: number, i: number): Float64Array {
  return moved(new Float64Array(n), i, 1);
}

function moved(x: Float64Array, i: number, step: number): Float64Array {
  const y = new Float64Array(x);
  y[i] = (y[i] as number) + step;
  return y;
}
