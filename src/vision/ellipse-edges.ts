/**
 * Edges across the outline of an ellipse, to a part of a pixel.
 *
 * Model    at rays evenly round it, along the normal: the steepest place within reach, whichever its sign, by a parabola through three
 * Fails    fewer places, or none
 */
import type { Ellipse } from './fit-ellipse.ts';
import type { Gray } from './gray.ts';
import { levelAt } from './level-at.ts';
import type { Point } from './point.ts';

/** step: levels of 255 over 1.5 px outwards, above 0 where it is brighter outside. */
export type EllipseEdge = { readonly turnRad: number; readonly placePx: Point; readonly step: number };

const STEP_PX = 0.5;
const HALF_PX = 0.75;
const LEAST_STEP = 6;

export function ellipseEdges(
  gray: Gray,
  { centre, longPx, shortPx, angleRad }: Ellipse,
  rays: number,
  reachPx: number,
): readonly EllipseEdge[] {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const shortBy = shortPx / longPx;
  return Array.from({ length: rays }, (_, i): EllipseEdge | null => {
    const turnRad = (2 * Math.PI * (i + 0.5)) / rays;
    const [ex, ey] = [longPx * Math.cos(turnRad), longPx * shortBy * Math.sin(turnRad)];
    const at: Point = [centre[0] + c * ex - s * ey, centre[1] + s * ex + c * ey];
    const [nx, ny] = [shortBy * Math.cos(turnRad), Math.sin(turnRad)];
    const size = Math.hypot(nx, ny);
    const normal: Point = [(c * nx - s * ny) / size, (s * nx + c * ny) / size];
    const edge = edgeNear(gray, at, normal, reachPx);
    if (!edge) return null;
    const placePx: Point = [at[0] + edge.offPx * normal[0], at[1] + edge.offPx * normal[1]];
    return { turnRad, placePx, step: edge.step };
  }).filter((edge) => edge !== null);
}

function edgeNear(
  gray: Gray,
  [x, y]: Point,
  [nx, ny]: Point,
  reachPx: number,
): { readonly offPx: number; readonly step: number } | null {
  const n = Math.ceil(reachPx / STEP_PX);
  const steps = Array.from({ length: 2 * n + 3 }, (_, i) => {
    const d = (i - n - 1) * STEP_PX;
    return (
      levelAt(gray, x + (d + HALF_PX) * nx, y + (d + HALF_PX) * ny) -
      levelAt(gray, x + (d - HALF_PX) * nx, y + (d - HALF_PX) * ny)
    );
  });
  let found: { offPx: number; step: number } | null = null;
  let most = LEAST_STEP;
  for (let i = 1; i < steps.length - 1; i++) {
    const step = steps[i] as number;
    const [a, b, c] = [Math.abs(steps[i - 1] as number), Math.abs(step), Math.abs(steps[i + 1] as number)];
    if (b < most || b < a || b <= c) continue;
    most = b;
    found = { offPx: (i - n - 1) * STEP_PX + (STEP_PX * (a - c)) / (2 * (a - 2 * b + c) || -1), step };
  }
  return found;
}
