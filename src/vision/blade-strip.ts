/**
 * A tape's blade laid flat: its brightness over reading and distance from the edge.
 *
 * Model    s(v) the lattice's projective scale along the edge; across, lengths go with the distance from the camera as 1 / (1 + c v) does, where
 *          along they go with its square; strokes lean by the lattice's shear
 * Assumes  a flat blade, as long across as along where it is seen: a blade turned about its length or seen from one end comes out stretched
 */
import type { MeasuredLattice } from './assist-lattice.ts';
import { placeIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import { levelAt } from './level-at.ts';
import type { Point } from './point.ts';
import { placeOf, stepAt } from './projective-scale.ts';

/**
 * Not mirrored: rows run from the edge over the blade, columns to the right of one who looks so. The first column lies at firstMm, each further one
 * stepMm on, up the readings or down.
 */
export type BladeStrip = {
  readonly columns: number;
  readonly rows: number;
  readonly firstMm: number;
  readonly stepMm: number;
  readonly levels: Float32Array;
};

export const STRIP_STEP_MM = 0.2;
/** No blade is wider. Common practice, no source. */
const MOST_ACROSS_MM = 26;

/** In the picture, px. */
export function bladePlace(lattice: MeasuredLattice, readingMm: number, acrossMm: number): Point {
  const { scale, frame, rough, middlePx } = lattice;
  const nearer = 1 + (scale.c * (readingMm - scale.middle)) / scale.half;
  const t = (acrossMm * Math.abs(stepAt(scale, scale.middle))) / nearer;
  return placeIn(frame, placeOf(scale, readingMm) + rough.shear * (t - middlePx), t);
}

/** Each place the mean of as many of the picture's pixels as it covers. */
export function bladeStrip(
  gray: Gray,
  lattice: MeasuredLattice,
  [fromMm, toMm]: readonly [number, number],
): BladeStrip {
  const columns = Math.round((toMm - fromMm) / STRIP_STEP_MM) + 1;
  const rows = Math.round(MOST_ACROSS_MM / STRIP_STEP_MM) + 1;
  const { along, across } = lattice.frame;
  const isMirrored = along[0] * across[1] - along[1] * across[0] < 0;
  const [firstMm, stepMm] = isMirrored ? [toMm, -STRIP_STEP_MM] : [fromMm, STRIP_STEP_MM];
  const parts = Math.max(1, Math.min(4, Math.round(STRIP_STEP_MM * lattice.measuring.pxPerMm)));
  const levels = new Float32Array(columns * rows);
  for (let at = 0; at < levels.length; at++) {
    const [column, row] = [at % columns, Math.floor(at / columns)];
    let sum = 0;
    for (let part = 0; part < parts * parts; part++) {
      const [i, j] = [(part % parts) + 0.5, Math.floor(part / parts) + 0.5];
      const readingMm = firstMm + (column + i / parts - 0.5) * stepMm;
      const [x, y] = bladePlace(lattice, readingMm, (row + j / parts - 0.5) * STRIP_STEP_MM);
      sum += levelAt(gray, x, y);
    }
    levels[at] = sum / (parts * parts);
  }
  return { columns, rows, firstMm, stepMm, levels };
}
