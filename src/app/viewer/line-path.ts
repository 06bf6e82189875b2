/** Lines and arrowheads as paths, in screen pixels. */
import type { ScreenPoint } from './view-transform.ts';

type Line = readonly ScreenPoint[];

export function linePath(points: Line): string {
  return `M${points.map(({ xCss, yCss }) => `${xCss.toFixed(2)} ${yCss.toFixed(2)}`).join('L')}`;
}

export function linesPath(lines: readonly Line[]): string {
  return lines.map(linePath).join('');
}

export function arrowsPath(arrows: readonly Line[]): string {
  return arrows.map((arrow) => `${linePath(arrow)}Z`).join('');
}
