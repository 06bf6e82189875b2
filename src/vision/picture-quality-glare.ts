/**
 * How much of a tape is lost in glare.
 *
 * Model    the tape between its outermost known places in pieces; on each side of that line a row of patches: a piece is lost where a third
 *          or more of the brighter side's patch is burnt out. The strokes lie on the blade's side, which is the brighter one or is burnt
 * Assumes  places along the printed edge of a blade that is straight
 */
import { isInPicture } from './level-at.ts';
import type { Picture } from './picture-quality.ts';
import { BURNT } from './picture-quality-light.ts';
import type { Point } from './point.ts';

const PIECES = 40;
/** Of the piece's patch. */
const LOST = 1 / 3;
/** Across, to either side of the line: strokes are 3 to 9 mm long. */
const REACH_MM = 6;

export type TapePlace = { readonly placePx: Point; readonly readingMm: number };

/** Share of the length that is lost, 0 to 1; null with fewer than two readings. */
export function glareShare(picture: Picture, places: readonly TapePlace[]): number | null {
  const inOrder = [...places].sort((a, b) => a.readingMm - b.readingMm);
  const [low, high] = [inOrder[0], inOrder.at(-1)];
  if (!low || !high || high.readingMm - low.readingMm < 1) return null;
  const [dx, dy] = [high.placePx[0] - low.placePx[0], high.placePx[1] - low.placePx[1]];
  const lengthPx = Math.hypot(dx, dy);
  const reachPx = Math.max(2, (REACH_MM * lengthPx) / (high.readingMm - low.readingMm));
  const across: Point = [-dy / lengthPx, dx / lengthPx];
  const along: Point = [dx / lengthPx, dy / lengthPx];
  let [seen, lost] = [0, 0];
  for (let piece = 0; piece < PIECES; piece++) {
    const s = ((piece + 0.5) * lengthPx) / PIECES;
    const shares = [1, -1].flatMap((side) => {
      const middle: Point = [
        low.placePx[0] + s * along[0] + side * 0.5 * reachPx * across[0],
        low.placePx[1] + s * along[1] + side * 0.5 * reachPx * across[1],
      ];
      return isInPicture(picture, ...middle, reachPx)
        ? [burntAbout(picture, middle, reachPx / 2, lengthPx / PIECES / 2)]
        : [];
    });
    if (shares.length === 0) continue;
    seen++;
    if (Math.max(...shares) >= LOST) lost++;
  }
  return seen > 0 ? lost / seen : null;
}

function burntAbout({ rgba, widthPx }: Picture, [x, y]: Point, ...reach: readonly number[]): number {
  const r = Math.max(1, Math.round(Math.min(...reach)));
  let [count, burnt] = [0, 0];
  for (let j = -r; j <= r; j++)
    for (let i = -r; i <= r; i++) {
      const at = 4 * ((Math.floor(y) + j) * widthPx + Math.floor(x) + i);
      count++;
      if (Math.max(rgba[at] as number, rgba[at + 1] as number, rgba[at + 2] as number) >= BURNT) burnt++;
    }
  return burnt / count;
}
