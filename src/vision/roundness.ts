/**
 * How round what lies about a place is: round things about one middle, an end on its washer on its boss, have slopes of brightness that point to
 * it or away from it, whatever is lighter.
 *
 * Model    at rays on circles about the place: the square of the slope along the ray less that of the slope square to it (side-map.ts), mean.
 *          0 where slopes go any way, below where they run round
 */
import type { Point } from './point.ts';
import { CELL_MM, COLUMNS, cellAt, type SideMap } from './side-map.ts';

type Ray = { readonly by: number; readonly cos: number; readonly sin: number };
export type Circles = readonly Ray[];

/** Radii from, to in mm, a step apart. */
export function circles(fromMm: number, toMm: number, stepMm: number, rays: number): Circles {
  const count = Math.floor((toMm - fromMm) / stepMm) + 1;
  return Array.from({ length: count * rays }, (_, i): Ray => {
    const radius = (fromMm + stepMm * Math.floor(i / rays)) / CELL_MM;
    const turn = (2 * Math.PI * ((i % rays) + 0.5)) / rays;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return { by: Math.round(radius * sin) * COLUMNS + Math.round(radius * cos), cos, sin };
  });
}

export function roundness({ alongs, acrosses }: SideMap, about: Point, rays: Circles): number {
  const middle = cellAt(about);
  let sum = 0;
  for (let i = 0; i < rays.length; i++) {
    const { by, cos, sin } = rays[i] as Ray;
    const [u, v] = [alongs[middle + by] as number, acrosses[middle + by] as number];
    const [out, round] = [u * cos + v * sin, v * cos - u * sin];
    sum += out * out - round * round;
  }
  return sum / rays.length;
}
