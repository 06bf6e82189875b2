/**
 * The colour of the light, and colours with that taken out.
 *
 * Model    hue by two logarithms of linear light: u = ln(red / green), v = ln(green / blue), each value with FLOOR added, so that what
 *          is nearly black has no hue; the light's own u and v are taken off
 *          light from neutral parts where they are given: their median; else from the region: nearly all that lies about a brake is
 *          gray or, by rust, dirt and paint, redder and yellower than gray, so the light is found at a low share of u and of v
 * Assumes  one light; what a second, near lamp adds is not taken out
 * Fails    where all is rusty or nothing is lit; the light found is held within what lamps and daylight reach
 */
import { quantile } from './paint-numbers.ts';
import type { PaintRegion } from './paint-region.ts';
import type { Rect } from './rect.ts';

export type Hue = readonly [u: number, v: number];

/** Of full white: noise and glare of the lens. */
const FLOOR = 0.004;
const NEUTRAL_SHARE = 0.3;
/** More cells make a share no surer. */
const ENOUGH_CELLS = 6000;
/** Sodium lamps reach 0.9 in u, an open sky -0.2 (from memory); cameras take out most. */
const LIGHT_U: readonly [number, number] = [-0.25, 0.6];
const LIGHT_V: readonly [number, number] = [-0.4, 0.8];
/** Darker than this nothing is said of the light; brighter, a channel is clipped. */
const LIT: readonly [number, number] = [0.015, 0.9];

export function hueOf(red: number, green: number, blue: number, light: Hue): Hue {
  return [
    Math.log((red + FLOOR) / (green + FLOOR)) - light[0],
    Math.log((green + FLOOR) / (blue + FLOOR)) - light[1],
  ];
}

/** Cells as red, green, blue in linear light, NaN left out. */
export function lightHue(linear: Float32Array, neutral: readonly Hue[]): Hue {
  if (neutral.length > 0) return [share(neutral, 0, 0.5), share(neutral, 1, 0.5)];
  const hues: Hue[] = [];
  const every = 3 * Math.max(1, Math.floor(linear.length / 3 / ENOUGH_CELLS));
  for (let at = 0; at + 2 < linear.length; at += every) {
    const [red, green, blue] = [linear[at] ?? 0, linear[at + 1] ?? 0, linear[at + 2] ?? 0];
    if (green > LIT[0] && Math.max(red, green, blue) < LIT[1]) hues.push(hueOf(red, green, blue, [0, 0]));
  }
  if (hues.length < 50) return [0, 0];
  return [within(share(hues, 0, NEUTRAL_SHARE), LIGHT_U), within(share(hues, 1, NEUTRAL_SHARE), LIGHT_V)];
}

/** Hues of what somebody names as gray in the region. */
export function neutralHues(region: PaintRegion, neutral: readonly Rect[]): Hue[] {
  const hues: Hue[] = [];
  const linear = (at: number) => ((region.rgba[at] ?? 0) / 255) ** 2.2;
  for (const rect of neutral)
    for (let y = Math.floor(rect.yPx - region.yPx); y < rect.yPx - region.yPx + rect.heightPx; y += 1)
      for (let x = Math.floor(rect.xPx - region.xPx); x < rect.xPx - region.xPx + rect.widthPx; x += 1) {
        if (x < 0 || y < 0 || x >= region.widthPx || y >= region.heightPx) continue;
        const at = 4 * (y * region.widthPx + x);
        hues.push(hueOf(linear(at), linear(at + 1), linear(at + 2), [0, 0]));
      }
  return hues;
}

function share(hues: readonly Hue[], axis: 0 | 1, part: number): number {
  return quantile(
    hues.map((hue) => hue[axis]),
    part,
  );
}

const within = (value: number, [low, high]: readonly [number, number]) =>
  Math.min(high, Math.max(low, value));
