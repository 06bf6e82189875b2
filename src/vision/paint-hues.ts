/**
 * How far a hue lies towards a paint, and away from what metal, rust and dirt have.
 *
 * Model    of a hue (u, v), see paint-light.ts
 *          red or orange   u - RUST v: rust and dirt gain yellow as they gain red, a red or orange paint does less
 *          yellow          v - 2 u
 *          white           nearness to gray: the brightness tells it from metal
 *          green           -u
 *          blue            -v, where u is below nothing too
 */
import type { Hue } from './paint-light.ts';

export const BAND_COLOURS = ['red or orange', 'yellow', 'white', 'green', 'blue'] as const;
export type BandColour = (typeof BAND_COLOURS)[number];

const RUST = 0.35;

export function paintness(colour: BandColour, [u, v]: Hue): number {
  switch (colour) {
    case 'red or orange':
      return u - RUST * v;
    case 'yellow':
      return (v - 2 * Math.abs(u)) / 1.8;
    case 'white':
      return 0.6 - 1.5 * Math.hypot(u, v);
    case 'green':
      return -u + Math.min(0, v);
    case 'blue':
      return Math.min(-v, -u + 0.2);
  }
}
