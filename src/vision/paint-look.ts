/** What of the push rod is the same for every stretch of it and every colour of paint. */
import { carryOn } from './paint-carry-on.ts';
import { type ColourSums, colourSums } from './paint-colour-edge.ts';
import type { RodEdges } from './paint-edges.ts';
import type { PaintMap } from './paint-map.ts';
import { type Shading, shadingOf } from './paint-shading.ts';
import type { Strip } from './paint-strip.ts';

export type RodLook = {
  readonly sums: ColourSums;
  /** By column. */
  readonly carry: readonly number[];
  readonly shading: Shading;
};

export const rodLook = (strip: Strip, edges: RodEdges, map: PaintMap): RodLook => ({
  sums: colourSums(map),
  carry: carryOn(strip, edges, map),
  shading: shadingOf(strip, edges, map),
});
