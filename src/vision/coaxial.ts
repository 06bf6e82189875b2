/**
 * Circles about one axis, as a pinhole camera sees them: their near halves.
 *
 * Model    a = (cos e cos t, cos e sin t, sin e): the axis, away from the rod and, seen from the rod's side, from the camera; its foot lies in
 *          the depth f, so that one unit there is a pixel. A ring's centre is the foot + behind a; its points, w = 0 the nearest to the
 *          camera, are the centre + radius (cos w n + sin w b), n = (sin e cos t, sin e sin t, -cos e), b = (-sin t, cos t, 0); seen at f X / Z.
 *          openness: of the circle about the foot, the axis along the line of sight: about the ratio of the axes of its ellipse
 * Assumes  square pixels, no distortion, the picture's middle on the line of sight
 */
import { fitEllipse } from './fit-ellipse.ts';
import type { Point } from './point.ts';

export type Axis = {
  readonly middle: Point;
  readonly focalPx: number;
  /** From the picture's middle. */
  readonly foot: Point;
  readonly turnRad: number;
  readonly tiltRad: number;
};
export type Ring = { readonly behind: number; readonly radius: number };
/** A place of an outline and the way square to it, outwards. facing: how squarely a cylinder's side looks at the camera there. */
export type Outline = { readonly at: Point; readonly normal: Point; readonly facing: number };

export function ringAt({ middle, focalPx, foot, turnRad, tiltRad }: Axis, ring: Ring, w: number): Outline {
  const { behind, radius } = ring;
  const [ct, st, ce, se] = [Math.cos(turnRad), Math.sin(turnRad), Math.cos(tiltRad), Math.sin(tiltRad)];
  const [cw, sw] = [Math.cos(w), Math.sin(w)];
  const [ox, oy, oz] = [cw * se * ct - sw * st, cw * se * st + sw * ct, -cw * ce];
  const [dx, dy, dz] = [-sw * se * ct - cw * st, -sw * se * st + cw * ct, sw * ce];
  const x = foot[0] + behind * ce * ct + radius * ox;
  const y = foot[1] + behind * ce * st + radius * oy;
  const z = focalPx + behind * se + radius * oz;
  const scale = focalPx / z;
  const [alongX, alongY] = [dx * z - x * dz, dy * z - y * dz];
  const size = Math.hypot(alongX, alongY) || 1;
  return {
    at: [middle[0] + scale * x, middle[1] + scale * y],
    normal: [alongY / size, -alongX / size],
    facing: -(ox * x + oy * y + oz * z) / Math.hypot(x, y, z),
  };
}

type Turned = Pick<Axis, 'foot' | 'focalPx' | 'turnRad'>;

/** How the axis turns from along the picture to along the line of sight to its foot: openness = most sin(tilt + lean). */
function lineOfSight({ foot: [x, y], focalPx, turnRad }: Turned) {
  const long = Math.hypot(x, y, focalPx);
  const along = (Math.cos(turnRad) * x + Math.sin(turnRad) * y) / long;
  return { most: Math.hypot(along, focalPx / long), leanRad: Math.atan2(along, focalPx / long) };
}

export function opennessOf(axis: Axis): number {
  const { most, leanRad } = lineOfSight(axis);
  return most * Math.sin(axis.tiltRad + leanRad);
}

/** Not a number where it cannot be that open. */
export function tiltFor(turned: Turned, openness: number): number {
  const { most, leanRad } = lineOfSight(turned);
  return Math.asin(openness / most) - leanRad;
}

/** The whole ellipse that a ring is seen as. */
export function ellipseOf(axis: Axis, ring: Ring) {
  const points = Array.from({ length: 24 }, (_, i) => ringAt(axis, ring, (i * Math.PI) / 12).at);
  return fitEllipse(points);
}
