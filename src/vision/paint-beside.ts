/** What lies beside the push rod along a stretch of it: whether the stretch goes on there. */
import { BESIDE, type PaintMap } from './paint-map.ts';
import type { Strip } from './paint-strip.ts';

/** In u and v together. */
export const NEAR_HUE = 0.22;

export function edgelessShare(map: PaintMap, from: number, to: number): number {
  const middles = [BESIDE.length / 2 - 1, BESIDE.length / 2].map((i) => map.beside[i] ?? []);
  const rims = [map.core[0] ?? [], map.core.at(-1) ?? []];
  let [edgeless, count] = [0, 0];
  for (let column = Math.max(0, from); column < to; column += 1) {
    count += 1;
    const alike = [0, 1].every((side) => {
      const [rim, off] = [rims[side]?.[column], middles[side]?.[column]];
      if (!rim || !off) return false;
      const light = Math.abs(Math.log((rim.light + 0.004) / (off.light + 0.004)));
      return Math.hypot(rim.hue[0] - off.hue[0], rim.hue[1] - off.hue[1]) < NEAR_HUE && light < 0.5;
    });
    if (alike) edgeless += 1;
  }
  return edgeless / Math.max(1, count);
}

/** The greatest share of a stretch so long between two columns. */
export function bestShare(line: readonly boolean[], length: number, from: number, to: number): number {
  let [best, sum] = [0, 0];
  const first = Math.max(0, from);
  for (let column = first; column < Math.min(line.length, to); column += 1) {
    sum += (line[column] ? 1 : 0) - (column - length >= first && line[column - length] ? 1 : 0);
    best = Math.max(best, sum);
  }
  return best / length;
}

/** From where the stretch's outer edge would go on beside the rod to the nearest place where paint ends there, mm. */
export function besideApart(
  strip: Strip,
  line: readonly number[],
  edge: number,
  isLoud: (value: number) => boolean,
): number {
  let best = line.length;
  for (let column = 1; column < line.length; column += 1)
    if (isLoud(line[column - 1] ?? Number.NaN) && !isLoud(line[column] ?? Number.NaN))
      best = Math.min(best, Math.abs(column - edge));
  return best * strip.stepMm;
}
