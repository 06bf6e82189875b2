/**
 * How surely a stretch of the push rod is a band of paint.
 *
 * Model    probability 1 / (1 + exp(-z)), z = BIAS + sum of weight times how far each property lies from low to high, 0 to 1
 * Assumes  a band is out as often as not among what is asked about
 * Fails    on what no painted scene resembles; the study says how often (docs/assists.md)
 * Source   weights: fitted by logistic regression with a ridge to painted scenes of two sets, which share neither seeds nor ranges with the
 *          one held back
 */
import type { PaintRun } from './paint-run.ts';

export const PROPERTIES = [
  'hue',
  'edge',
  'slope',
  'scatter',
  'width',
  'covered',
  'brighter',
  'rusty-rod',
  'about',
  'goes-on-beside',
  'far-from-face',
  'yellow',
] as const;
export type Property = (typeof PROPERTIES)[number];

type Weighing = {
  readonly of: (run: PaintRun) => number;
  readonly low: number;
  readonly high: number;
  readonly weight: number;
};

const BIAS = -2.54;

const WEIGHINGS: Readonly<Record<Property, Weighing>> = {
  hue: { of: ({ inside }) => inside, low: 0.3, high: 1.1, weight: 2.85 },
  edge: { of: ({ edgeDrop }) => edgeDrop, low: 0.1, high: 0.8, weight: 3.98 },
  slope: { of: ({ edgeSlopeMm }) => Math.abs(edgeSlopeMm), low: 0.5, high: 3, weight: -2.42 },
  scatter: { of: ({ edgeScatterMm }) => edgeScatterMm, low: 0.2, high: 1.5, weight: -0.69 },
  width: { of: ({ edgeWidthMm }) => edgeWidthMm, low: 1, high: 4, weight: -3.85 },
  covered: { of: ({ covered }) => covered, low: 0.4, high: 1, weight: 1.21 },
  brighter: { of: ({ redStep }) => redStep, low: -0.6, high: 1, weight: 4.12 },
  'rusty-rod': { of: ({ outside }) => outside, low: 0, high: 0.8, weight: -1.43 },
  about: { of: ({ about }) => about, low: 0.05, high: 0.5, weight: -3.71 },
  'goes-on-beside': { of: goesOnBeside, low: 0, high: 1, weight: -1.74 },
  'far-from-face': { of: ({ fromMm }) => fromMm, low: 4, high: 20, weight: -5.46 },
  yellow: { of: ({ yellow }) => yellow, low: 0, high: 1.5, weight: -3.1 },
};

/** Of a paint that is neither red nor orange: brightness in red and yellow say nothing of it, and count as they do for a middling band. */
const OF_RED_ALONE: Readonly<Partial<Record<Property, number>>> = { brighter: 0.6, yellow: 0.3 };

export type Score = {
  readonly probability: number;
  /** What speaks most against a band. */
  readonly against: Property;
};

export function scoreOf(run: PaintRun): Score {
  let z = BIAS;
  let worst: { property: Property; lost: number } = { property: 'hue', lost: -1 };
  for (const property of PROPERTIES) {
    const { weight } = WEIGHINGS[property];
    const part = partOf(property, run);
    z += weight * part;
    const lost = weight > 0 ? weight * (1 - part) : -weight * part;
    if (lost > worst.lost) worst = { property, lost };
  }
  return { probability: 1 / (1 + Math.exp(-z)), against: worst.property };
}

export function partOf(property: Property, run: PaintRun): number {
  const fixed = run.colour === 'red or orange' ? undefined : OF_RED_ALONE[property];
  if (fixed !== undefined) return fixed;
  const { of, low, high } = WEIGHINGS[property];
  return rise(of(run), low, high);
}

export const lengthMm = ({ fromMm, toMm }: PaintRun) => toMm - Math.max(0, fromMm);

/**
 * 1 where something of the same hue lies beside the rod too and ends there on the line of the stretch's own edge, or lies on both sides of a
 * stretch away from the face: it crosses the rod.
 */
function goesOnBeside({ besideShare: [one, other], besideApartMm, fromMm }: PaintRun): number {
  const both = Math.min(rise(one, 0.5, 0.8), rise(other, 0.5, 0.8), rise(fromMm, 3, 8));
  const endsAlike = [one, other].map((share, side) =>
    Math.min(rise(share, 0.3, 0.6), 1 - rise(besideApartMm[side] ?? 0, 1, 2.5)),
  );
  return Math.max(both, ...endsAlike);
}

/** What cannot be said counts as nothing. */
function rise(value: number, low: number, high: number): number {
  return Number.isFinite(value) ? Math.min(1, Math.max(0, (value - low) / (high - low))) : 0;
}
