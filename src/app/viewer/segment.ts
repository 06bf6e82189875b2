/** A straight line between two points of the screen, and what boxes and marks take from it. */
import type { Box } from './box.ts';
import type { ScreenPoint } from './view-transform.ts';

export type Segment = readonly [ScreenPoint, ScreenPoint];

/** How much of the line lies inside the box. */
export function lengthInsideCss([from, to]: Segment, box: Box): number {
  const dx = to.xCss - from.xCss;
  const dy = to.yCss - from.yCss;
  const across = shareBetween(from.xCss, dx, box.leftCss, box.leftCss + box.widthCss);
  const down = shareBetween(from.yCss, dy, box.topCss, box.topCss + box.heightCss);
  const share = Math.min(1, across[1], down[1]) - Math.max(0, across[0], down[0]);
  return Math.max(0, share) * Math.hypot(dx, dy);
}

/** The parts of the line that stay away from every point: what a mark points at stays in sight. */
export function outsideDiscs(
  [from, to]: Segment,
  centres: readonly ScreenPoint[],
  radiusCss: number,
): readonly Segment[] {
  const dx = to.xCss - from.xCss;
  const dy = to.yCss - from.yCss;
  const lengthCss = Math.hypot(dx, dy);
  if (lengthCss === 0) return [];
  const covered = centres
    .map((centre) => chord(from, { xCss: dx / lengthCss, yCss: dy / lengthCss }, centre, radiusCss))
    .filter(([start, end]) => end > start)
    .sort((a, b) => a[0] - b[0]);

  const at = (css: number): ScreenPoint => ({
    xCss: from.xCss + (dx * css) / lengthCss,
    yCss: from.yCss + (dy * css) / lengthCss,
  });
  const parts: Segment[] = [];
  let freeFrom = 0;
  for (const [start, end] of [...covered, [lengthCss, lengthCss] as const]) {
    if (start > freeFrom) parts.push([at(freeFrom), at(Math.min(start, lengthCss))]);
    freeFrom = Math.max(freeFrom, end);
    if (freeFrom >= lengthCss) break;
  }
  return parts;
}

function shareBetween(start: number, change: number, low: number, high: number): readonly [number, number] {
  if (change === 0) return start >= low && start <= high ? [0, 1] : [1, 0];
  const a = (low - start) / change;
  const b = (high - start) / change;
  return [Math.min(a, b), Math.max(a, b)];
}

function chord(
  from: ScreenPoint,
  along: ScreenPoint,
  centre: ScreenPoint,
  radiusCss: number,
): readonly [number, number] {
  const x = centre.xCss - from.xCss;
  const y = centre.yCss - from.yCss;
  const foot = x * along.xCss + y * along.yCss;
  const asideSq = (x * along.yCss - y * along.xCss) ** 2;
  const half = Math.sqrt(Math.max(0, radiusCss ** 2 - asideSq));
  return [foot - half, foot + half];
}
