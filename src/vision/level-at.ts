/** The brightness between pixels, by the four about it; beyond the rim that of the rim. */
import type { Gray } from './gray.ts';

export function levelAt({ widthPx, heightPx, values }: Gray, x: number, y: number): number {
  const column = Math.min(Math.max(x - 0.5, 0), widthPx - 1.001);
  const row = Math.min(Math.max(y - 0.5, 0), heightPx - 1.001);
  const left = Math.floor(column);
  const top = Math.floor(row);
  const right = column - left;
  const low = row - top;
  const at = top * widthPx + left;
  const a = values[at] as number;
  const b = values[at + 1] as number;
  const c = values[at + widthPx] as number;
  const d = values[at + widthPx + 1] as number;
  return a + right * (b - a) + low * (c - a + right * (a - b - c + d));
}

export const isInPicture = (
  { widthPx, heightPx }: Omit<Gray, 'values'>,
  x: number,
  y: number,
  roomPx = 0,
): boolean => x > roomPx && y > roomPx && x < widthPx - roomPx && y < heightPx - roomPx;
