/**
 * Where the axis of a round bar is seen, from the two edges of its outline.
 *
 * Model    each edge and the camera's centre span a plane that touches the bar; both are equally far from the axis, which therefore lies in the
 *          plane that halves their angle: n = n1 / |n1| + n2 / |n2|. For an edge a x + b y + c = 0 about the picture's middle, n = (a f, b f, c).
 *          The line halfway between the edges lies beside it by f tan(h) tan^2(r / d) / cos^2(h), h how far off the middle the bar is seen, r / d its
 *          radius over its distance: 0.03 px at f = 1500 px, h = 6 degrees, a rod of 5/8 in at 600 mm; a focal length off by a fifth changes
 *          that by less than its half.
 * Assumes  square pixels, no distortion, the picture's middle on the line of sight
 * Source   derived here
 */
import type { Point } from './point.ts';
import type { Lens } from './usual-lens.ts';

/** Through both points, in pixels. */
export type PictureLine = readonly [Point, Point];

/** a x + b y + c = 0, pixels from the corner of the first pixel; the first edge's points in the same order along the bar as the second's. */
export type LineEquation = readonly [a: number, b: number, c: number];

export function cylinderAxis(edges: readonly [PictureLine, PictureLine], lens: Lens): LineEquation {
  const [f, [mx, my]] = [lens.focalPx, lens.middle];
  const [ax, ay, az] = edges
    .map(([p, q]): LineEquation => {
      const [a, b] = [p[1] - q[1], q[0] - p[0]];
      const c = -(a * (p[0] - mx) + b * (p[1] - my));
      const size = Math.hypot(a * f, b * f, c);
      return [(a * f) / size, (b * f) / size, c / size];
    })
    .reduce(([x, y, z], [dx, dy, dz]) => [x + dx, y + dy, z + dz]);
  const [a, b] = [ax / f, ay / f];
  return [a, b, az - a * mx - b * my];
}
