/**
 * How the stroke lies on each picture, for drawing it as a dimension.
 *
 * Model    points of the plane through the pin's visible end, parallel to the plane of motion, projected by the adjusted camera:
 *          extension lines at px of each state, away from the camshaft; dimension line between them, clear of the parts.
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { pictureOf } from '../adjustment/picture-of.ts';
import { zFromDepth } from '../adjustment/problem.ts';
import type { BrakeState } from '../marks/view.ts';
import type { PicturePoint, StrokeDrawing } from './measurement.ts';

/** Millimetres to the side of the chamber axis that is free of the arm. */
const DIMENSION_ASIDE = 62;
const EXTENSION_BEYOND = 6;
const EXTENSION_GAP = 9;
const AXIS_BEYOND = 25;

export function strokeDrawing(adjustment: Adjustment, viewIndex: number): StrokeDrawing {
  const { layout, problem, best } = adjustment;
  const view = problem.views[viewIndex] as (typeof problem.views)[number];
  const { x } = best;
  const z = zFromDepth(x[layout.pinDepth] as number, problem.hand);
  const seen = pictureOf(adjustment, viewIndex);
  const picture = (xMm: number, yMm: number): PicturePoint => seen([xMm, yMm, z]);
  const pin = (state: BrakeState) => {
    const at = layout.pins[state] as number;
    return { xMm: x[at] as number, yMm: x[at + 1] as number };
  };
  const [released, applied] = [pin('released'), pin('applied')];
  const extension = ({ xMm, yMm }: ReturnType<typeof pin>) =>
    [picture(xMm, yMm - EXTENSION_GAP), picture(xMm, -DIMENSION_ASIDE - EXTENSION_BEYOND)] as const;
  return {
    state: view.state,
    axis: [picture(0, 0), picture(Math.max(released.xMm, applied.xMm) + AXIS_BEYOND, 0)],
    extensions: [extension(released), extension(applied)],
    dimension: [picture(released.xMm, -DIMENSION_ASIDE), picture(applied.xMm, -DIMENSION_ASIDE)],
  };
}
