/**
 * How the stroke lies on each picture, and on each frame of a followed clip, for drawing it as a dimension.
 *
 * Model    points of the plane through the pin's visible end, parallel to the plane of motion, projected by the adjusted camera, in a
 *          frame from its own pose (frame-pose.ts): extension lines at px of each state, in a frame at that of the released one and as
 *          far as the pin has come, away from the camshaft; dimension line between them, clear of the parts.
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { type ChamberToPicture, pictureFrom, pictureOf } from '../adjustment/picture-of.ts';
import { zFromDepth } from '../adjustment/problem.ts';
import type { BrakeState } from '../marks/view.ts';
import type { FramePose } from './frame-pose.ts';
import type { PicturePoint, StrokeDrawing } from './measurement.ts';

/** Millimetres to the side of the chamber axis that is free of the arm. */
const DIMENSION_ASIDE = 62;
const EXTENSION_BEYOND = 6;
const EXTENSION_GAP = 9;
const AXIS_BEYOND = 25;

type Pin = { readonly xMm: number; readonly yMm: number };

export function strokeDrawing(adjustment: Adjustment, viewIndex: number): StrokeDrawing {
  const view = adjustment.problem.views[viewIndex] as Adjustment['problem']['views'][number];
  const pins = [pinOf(adjustment, 'released'), pinOf(adjustment, 'applied')] as const;
  return drawing(adjustment, view.state, pictureOf(adjustment, viewIndex), pins);
}

/** null where the pin was not seen. */
export function strokeDrawingInFrame(
  adjustment: Adjustment,
  state: BrakeState,
  frame: FramePose | null,
): StrokeDrawing | null {
  const view = adjustment.problem.views.find((each) => each.state === state);
  if (!view || !frame?.pin) return null;
  const seen = pictureFrom(adjustment, view.camera, frame.pose);
  return drawing(adjustment, state, seen, [pinOf(adjustment, 'released'), frame.pin]);
}

function pinOf({ layout, best: { x } }: Adjustment, state: BrakeState): Pin {
  const at = layout.pins[state] as number;
  return { xMm: x[at] as number, yMm: x[at + 1] as number };
}

function drawing(
  { layout, problem, best }: Adjustment,
  state: BrakeState,
  seen: ChamberToPicture,
  [from, to]: readonly [Pin, Pin],
): StrokeDrawing {
  const z = zFromDepth(best.x[layout.pinDepth] as number, problem.hand);
  const picture = (xMm: number, yMm: number): PicturePoint => seen([xMm, yMm, z]);
  const extension = ({ xMm, yMm }: Pin) =>
    [picture(xMm, yMm - EXTENSION_GAP), picture(xMm, -DIMENSION_ASIDE - EXTENSION_BEYOND)] as const;
  return {
    state,
    axis: [picture(0, 0), picture(Math.max(from.xMm, to.xMm) + AXIS_BEYOND, 0)],
    extensions: [extension(from), extension(to)],
    dimension: [picture(from.xMm, -DIMENSION_ASIDE), picture(to.xMm, -DIMENSION_ASIDE)],
  };
}
