/** A point with the uncertainty of how it was placed here and now. */
import { type Hand, type PlacedPoint, placementSigmaPx } from '../../marks/placement.ts';
import { loupeScale } from './loupe-place.ts';
import type { FramePoint, View } from './view-transform.ts';

export function placedPoint(view: View, point: FramePoint, hand: Hand, gearing: number): PlacedPoint {
  const magnification = (loupeScale(hand, view.scale) ?? view.scale) / view.scale;
  const sigmaPx = placementSigmaPx({ hand, screenPxPerFramePx: view.scale, gearing, magnification });
  return { xPx: point.xPx, yPx: point.yPx, sigmaPx };
}
