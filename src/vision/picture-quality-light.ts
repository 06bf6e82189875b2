/**
 * How much of a part of a picture is burnt out, and how much is so dark that nothing can be told in it.
 *
 * Model    burnt: a colour at BURNT or above, its light is not known any more. dark: luma below DARK, where half as much light again is a
 *          step of fewer levels than the assists take for an edge (8 of 255): solve e(1.5 l(v)) - v = 8 for v, with l the linear light of
 *          sRGB's level v and e its inverse: v = 29.5
 * Source   transfer function of sRGB: IEC 61966-2-1 (from memory)
 */
import type { Picture } from './picture-quality.ts';
import type { Rect } from './rect.ts';

export type Light = { readonly burntShare: number; readonly darkShare: number };

export const BURNT = 252;
const DARK = 30;
/** Pixels looked at along the longer side: shares need no more. */
const MOST_ALONG = 480;

export function lightIn({ rgba, widthPx }: Picture, gray: Uint8Array, box: Rect): Light {
  const step = Math.max(1, Math.floor(Math.max(box.widthPx, box.heightPx) / MOST_ALONG));
  let [count, burnt, dark] = [0, 0, 0];
  for (let y = box.yPx; y < box.yPx + box.heightPx; y += step)
    for (let x = box.xPx; x < box.xPx + box.widthPx; x += step) {
      const at = y * widthPx + x;
      const most = Math.max(rgba[4 * at] as number, rgba[4 * at + 1] as number, rgba[4 * at + 2] as number);
      count++;
      if (most >= BURNT) burnt++;
      else if ((gray[at] as number) < DARK) dark++;
    }
  return { burntShare: count ? burnt / count : 0, darkShare: count ? dark / count : 0 };
}
