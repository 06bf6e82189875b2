/**
 * Places for marks from ties that were found in two pictures.
 *
 * Model    sigma^2 = (what the search says)^2 + (LENS x the picture's longer side)^2
 * Assumes  what a lens does beside the engine's camera, tangential terms and the shutter's rolling among it, is alike over a tie's
 *          surroundings and by chance over the picture; common practice, no source.
 */
import type { PlacedPoint } from './placement.ts';

type Place = readonly [x: number, y: number];
export type FoundTie = { readonly firstPx: Place; readonly secondPx: Place; readonly sigmaPx: number };
export type TiePlaces = { readonly first: PlacedPoint; readonly second: PlacedPoint };
type Size = { readonly widthPx: number; readonly heightPx: number };

/** 0.2 px of 4,000. */
const LENS = 5e-5;

export function tiePlaces(ties: readonly FoundTie[], first: Size, second: Size): readonly TiePlaces[] {
  const placed = ([xPx, yPx]: Place, sigmaPx: number, { widthPx, heightPx }: Size): PlacedPoint => ({
    xPx,
    yPx,
    sigmaPx: Math.hypot(sigmaPx, LENS * Math.max(widthPx, heightPx)),
  });
  return ties.map(({ firstPx, secondPx, sigmaPx }) => ({
    first: placed(firstPx, sigmaPx, first),
    second: placed(secondPx, sigmaPx, second),
  }));
}
