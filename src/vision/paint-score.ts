/**
 * How sure a stretch is a band of paint: the least of what each of a band's properties says, 0 to 1.
 *
 * Model    each property rises or falls evenly between two values
 * Source   the values: chosen on painted scenes of the tuning set (docs/assists.md), which shares nothing with the one held back
 */
import type { PaintRun } from './paint-run.ts';

export const PROPERTIES = [
  'hue',
  'contrast',
  'edge',
  'square-edge',
  'even-edge',
  'sharp-edge',
  'covered',
  'across',
  'length',
  'outside-the-face',
  'ends-with-the-rod',
] as const;
export type Property = (typeof PROPERTIES)[number];

export type Score = { readonly score: number; readonly weakest: Property };

export function scoreOf(run: PaintRun): Score {
  const crossing = [0, 1].map((side) =>
    Math.min(rise(run.besideShare[side] as number, 0.35, 0.6), 1 - rise(run.besideApartMm[side] as number, 1, 2.2)),
  );
  const each: Readonly<Record<Property, number>> = {
    hue: rise(run.inside, 0.4, 0.62),
    contrast: rise(run.inside - run.outside, 0.12, 0.4),
    edge: rise(run.edgeDrop, 0.22, 0.45),
    'square-edge': 1 - rise(Math.abs(run.edgeSlopeMm), 1.5, 2.6),
    'even-edge': 1 - rise(run.edgeScatterMm, 0.8, 1.5),
    'sharp-edge': 1 - rise(run.edgeWidthMm, 2.6, 4.2),
    covered: rise(run.covered, 0.5, 0.7),
    across: rise(run.across, 0.6, 0.85),
    length: rise(run.toMm - Math.max(0, run.fromMm), 0.8, 1.6),
    'outside-the-face': rise(run.toMm, 0.6, 1.4),
    'ends-with-the-rod': 1 - Math.max(...crossing),
  };
  return PROPERTIES.reduce<Score>(
    (least, property) => (each[property] < least.score ? { score: each[property], weakest: property } : least),
    { score: 1, weakest: 'hue' },
  );
}

export function rise(value: number, low: number, high: number): number {
  return Number.isNaN(value) ? 0 : Math.min(1, Math.max(0, (value - low) / (high - low)));
}
