/** How far a point near an ellipse lies outside of it. */
import type { Ellipse } from '../../src/vision/fit-ellipse.ts';
import type { Point } from '../../src/vision/point.ts';

export function outsideOf({ centre, longPx, shortPx, angleRad }: Ellipse, [x, y]: Point): number {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const [u, v] = [c * (x - centre[0]) + s * (y - centre[1]), -s * (x - centre[0]) + c * (y - centre[1])];
  let w = Math.atan2(v / shortPx, u / longPx);
  for (let i = 0; i < 6; i++) {
    const [cw, sw] = [Math.cos(w), Math.sin(w)];
    const slope = -longPx * sw * (u - longPx * cw) + shortPx * cw * (v - shortPx * sw);
    w += Math.max(-0.2, Math.min(0.2, slope / ((longPx * sw) ** 2 + (shortPx * cw) ** 2)));
  }
  const sign = (u / longPx) ** 2 + (v / shortPx) ** 2 > 1 ? 1 : -1;
  return sign * Math.hypot(u - longPx * Math.cos(w), v - shortPx * Math.sin(w));
}
