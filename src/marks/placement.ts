/**
 * How well a point was placed by hand: its standard uncertainty, in frame pixels, from how it was seen and moved.
 *
 * Model    sigma = max(0.5 px, sqrt((hand * gearing)^2 + (EYE / magnification)^2) / scale)
 *          hand            what the hand adds, screen pixels: mouse 0.7, finger 2.5, keys 0
 *          gearing         motion of the mark over motion of the hand: 1, or less in a geared drag
 *          EYE             0.7 screen pixels: how well an eye sets a cross on what it sees
 *          magnification   of the loupe over the picture beside it: 1 where no loupe is shown
 *          scale           screen pixels per frame pixel at that moment
 *          A mouse without loupe makes sqrt(0.7^2 + 0.7^2) = 1 screen pixel. A finger's contact centre shifts as it lifts,
 *          more in a glove. Keys step by at most one frame pixel (1/sqrt(12) = 0.29 px), which the floor covers.
 *          The floor: a pin's edge or a graduation is itself a pixel or so wide, whatever the zoom.
 * Assumes  screen pixels are CSS pixels (about 0.2 mm on a phone, 0.26 mm on a desktop); error alike in x and y.
 * Source   common practice, no source: the three constants are to be replaced by repeated placings when there are some.
 */
import { assert } from '../basics/result.ts';

export type PlacedPoint = { readonly xPx: number; readonly yPx: number; readonly sigmaPx: number };

export type Hand = 'mouse' | 'finger' | 'keys';

export type PlacedWith = {
  readonly hand: Hand;
  readonly screenPxPerFramePx: number;
  readonly gearing: number;
  readonly magnification: number;
};

const HAND_SCREEN_PX = { mouse: 0.7, finger: 2.5, keys: 0 } as const;
const EYE_SCREEN_PX = 0.7;
const LEAST_SIGMA_PX = 0.5;

export function placementSigmaPx(placed: PlacedWith): number {
  const { hand, screenPxPerFramePx, gearing, magnification } = placed;
  assert(screenPxPerFramePx > 0 && gearing > 0 && magnification >= 1, 'a picture is seen at some scale');
  const screenPx = Math.hypot(HAND_SCREEN_PX[hand] * gearing, EYE_SCREEN_PX / magnification);
  return Math.max(LEAST_SIGMA_PX, screenPx / screenPxPerFramePx);
}
