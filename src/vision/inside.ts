/**
 * Whether a place lies inside a closed outline.
 *
 * Model    a ray to the right crosses the outline an odd number of times
 */
import type { Point } from './point.ts';

export function inside([x, y]: Point, outline: readonly Point[]): boolean {
  let within = false;
  outline.forEach(([ax, ay], index) => {
    const [bx, by] = outline[(index + 1) % outline.length] as Point;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) within = !within;
  });
  return within;
}
