/**
 * How surely a stretch of the push rod is a band of paint.
 *
 * Model    probability 1 / (1 + exp(-z)), z = bias + what each property adds: nothing below its first knot, then a straight piece from knot
 *          to knot, each with a weight of its own; of red or orange also the products of PAIRED, two by two, each as how far it has gone
 *          from its first knot to its last, less a half: what speaks for a band on a clean rod may not on a rusty one
 * Assumes  a band is out as often as not among what is asked about
 * Fails    on what no painted scene resembles; the study says how often (docs/assists.md)
 * Source   weights: paint-weights.ts
 */
import { lengthMm, type PaintRun } from './paint-run.ts';
import { OTHER_WEIGHTS, RED_WEIGHTS, type RunWeights } from './paint-weights.ts';

type Weighing = { readonly of: (run: PaintRun) => number; readonly knots: readonly number[] };

export const WEIGHINGS = {
  edge: { of: ({ fall }) => fall, knots: [0.02, 0.1, 0.25, 0.5, 0.9] },
  drop: { of: ({ drop }) => drop, knots: [0.05, 0.25, 0.5, 1] },
  'even-edge': { of: ({ fallEven }) => fallEven, knots: [0.5, 1.5, 3, 6] },
  'edge-across': { of: ({ fallRows }) => fallRows, knots: [0.4, 0.75, 1] },
  slope: { of: ({ slopeMm }) => Math.abs(slopeMm), knots: [0, 0.7, 1.5] },
  aslant: { of: ({ aslant }) => aslant, knots: [1, 1.2, 1.6, 2.2] },
  scatter: { of: ({ scatterMm }) => scatterMm, knots: [0.1, 0.5, 1.2] },
  width: { of: ({ widthMm }) => widthMm, knots: [0.5, 1.2, 2.5, 4] },
  hue: { of: ({ loud }) => loud, knots: [-0.4, -0.1, 0.2, 0.5, 0.9] },
  amount: { of: ({ mass }) => mass, knots: [0, 0.5, 1.2, 2.2] },
  covered: { of: ({ covered }) => covered, knots: [0.5, 0.75, 0.9, 1] },
  'rusty-rod': { of: ({ alike }) => alike, knots: [0, 0.1, 0.3, 0.6] },
  'above-the-rod': { of: ({ above }) => above, knots: [-0.4, 0, 0.3, 0.8] },
  'step-red': { of: ({ stepRed }) => stepRed, knots: [-0.8, -0.3, 0, 0.3, 0.8] },
  'step-green': { of: ({ stepGreen }) => stepGreen, knots: [-1.2, -0.5, 0, 0.5] },
  'step-yellow': { of: ({ stepV }) => stepV, knots: [-0.8, -0.3, 0, 0.4, 0.9] },
  yellow: { of: ({ v }) => v, knots: [-0.2, 0.2, 0.6, 1, 1.5] },
  'step-hue': { of: ({ stepU }) => stepU, knots: [-0.1, 0.1, 0.4, 0.9] },
  'less-yellow': { of: ({ lessYellow }) => lessYellow, knots: [-0.5, -0.1, 0.3, 0.7] },
  'red-past-it': { of: ({ outsideU }) => outsideU, knots: [0, 0.2, 0.5, 0.9] },
  'yellow-past-it': { of: ({ outsideV }) => outsideV, knots: [0, 0.3, 0.7, 1.2] },
  light: { of: ({ light }) => Math.log(light + 0.002), knots: [-5, -3.5, -2, -0.5] },
  'mottled-past-it': { of: ({ mottledOutside }) => mottledOutside, knots: [0.03, 0.1, 0.2, 0.35] },
  mottled: { of: ({ mottled }) => mottled, knots: [0.03, 0.1, 0.2, 0.35] },
  'hue-on-rod': { of: ({ hueOnRod }) => hueOnRod, knots: [0, 0.05, 0.2, 0.5] },
  'hue-beside': { of: ({ hueBeside }) => hueBeside, knots: [0, 0.04, 0.15, 0.4] },
  about: { of: ({ about }) => about, knots: [0, 0.08, 0.25, 0.5] },
  crosses: { of: ({ crosses, fromMm }) => crosses * rise(fromMm, 1, 5), knots: [0.2, 0.6, 1] },
  'same-beside': { of: ({ crosses }) => crosses, knots: [0.2, 0.6, 1] },
  edgeless: { of: ({ edgeless }) => edgeless, knots: [0, 0.3, 0.8] },
  'at-face': { of: ({ atFace, toMm }) => atFace * (1 - rise(toMm, 2, 6)), knots: [0, 0.3, 0.8] },
  'goes-on-beside': { of: goesOnBeside, knots: [0, 1] },
  'edge-beside': { of: ({ besideFall }) => besideFall, knots: [0.2, 0.6, 1.2] },
  'red-light': { of: ({ besideU }) => besideU, knots: [0.3, 0.8, 1.5] },
  rival: { of: ({ rival }) => rival, knots: [0.3, 0.6, 1, 1.6] },
  'far-from-face': { of: ({ fromMm }) => fromMm, knots: [-2, 1, 4, 10, 20] },
  length: { of: lengthMm, knots: [0.7, 2, 4, 10, 25] },
  change: { of: ({ change }) => change, knots: [0.1, 0.3, 0.6, 1.2] },
  'even-change': { of: ({ even }) => even, knots: [0.5, 1.5, 3, 6, 10] },
  'hue-change': { of: ({ hueChange }) => hueChange, knots: [0.05, 0.2, 0.5, 1] },
  'even-hue-change': { of: ({ hueEven }) => hueEven, knots: [0.5, 1.5, 3, 6, 10] },
  'change-across': { of: ({ across }) => across, knots: [0.4, 0.75, 1] },
  'sharp-change': { of: ({ sharp }) => sharp, knots: [0.2, 0.5, 0.8] },
  'even-rival': { of: ({ evenRival }) => evenRival, knots: [0.2, 0.6, 1, 2] },
  apart: { of: ({ apart }) => apart, knots: [0.5, 1.2, 2, 3, 4] },
  streaky: { of: ({ streaky }) => streaky, knots: [0.02, 0.06, 0.12, 0.25] },
  'streaky-past-it': { of: ({ streakyOutside }) => streakyOutside, knots: [0.02, 0.06, 0.12, 0.25] },
  'carries-on': { of: ({ carriesOn }) => carriesOn, knots: [0, 0.2, 0.4, 0.6] },
  'shaded-along': { of: ({ shadedAlong }) => shadedAlong, knots: [-0.5, 0, 0.4, 0.8] },
  'shaded-alike': { of: ({ shadedAlike }) => shadedAlike, knots: [-0.5, 0.3, 0.8, 1] },
  burnt: { of: ({ burnt }) => burnt, knots: [0, 0.3, 0.8] },
  'burnt-past-it': { of: ({ burntOutside }) => burntOutside, knots: [0, 0.3, 0.8] },
  'nearest-on-rod': { of: ({ nearestOnRod }) => nearestOnRod, knots: [0, 0.1, 0.25, 0.6] },
  'face-louder': { of: ({ faceLouder }) => faceLouder, knots: [-0.5, 0, 0.4, 0.8] },
} as const satisfies Readonly<Record<string, Weighing>>;

export type Property = keyof typeof WEIGHINGS;
export const PROPERTIES = Object.keys(WEIGHINGS) as Property[];

/** Of a paint that is neither red nor orange: what says nothing of red. */
export const OTHER_PROPERTIES: readonly Property[] = [
  'edge',
  'drop',
  'even-edge',
  'edge-across',
  'slope',
  'width',
  'hue',
  'covered',
  'rusty-rod',
  'above-the-rod',
  'mottled',
  'hue-on-rod',
  'hue-beside',
  'about',
  'crosses',
  'same-beside',
  'edgeless',
  'at-face',
  'goes-on-beside',
  'edge-beside',
  'far-from-face',
];

/** Those whose products told most, of all. */
export const PAIRED: readonly Property[] = [
  'drop',
  'aslant',
  'hue',
  'amount',
  'rusty-rod',
  'step-red',
  'step-green',
  'yellow',
  'less-yellow',
  'red-past-it',
  'light',
  'mottled',
  'hue-on-rod',
  'hue-beside',
  'far-from-face',
  'length',
  'carries-on',
  'shaded-along',
  'burnt',
];

export type Score = {
  readonly probability: number;
  /** What speaks most against a band. */
  readonly against: Property;
};

export function scoreOf(run: PaintRun): Score {
  const { bias, weights, pairs }: RunWeights = run.colour === 'red or orange' ? RED_WEIGHTS : OTHER_WEIGHTS;
  const offs = pairs.length === 0 ? [] : pairedOffs(run);
  const products = pairProducts(offs);
  let z = bias + products.reduce((sum, product, i) => sum + product * (pairs[i] ?? 0), 0);
  let worst: { property: Property; lost: number } = { property: 'hue', lost: -1 };
  for (const property of PROPERTIES) {
    const own = weights[property];
    if (!own) continue;
    const pieces = piecesOf(property, run);
    z += own.reduce((sum, weight, i) => sum + weight * (pieces[i] ?? 0), 0);
    const lost = lostBy(pieces, own, slopeOf(PAIRED.indexOf(property), offs, pairs));
    if (lost > worst.lost) worst = { property, lost };
  }
  return { probability: 1 / (1 + Math.exp(-z)), against: worst.property };
}

/** Of PAIRED, how far each has gone, less a half. */
export const pairedOffs = (run: PaintRun): readonly number[] =>
  PAIRED.map((property) => {
    const pieces = piecesOf(property, run);
    return pieces.reduce((sum, piece) => sum + piece, 0) / pieces.length - 0.5;
  });

/** Each with itself and those after it. */
export const pairProducts = (offs: readonly number[]): readonly number[] =>
  offs.flatMap((one, i) => offs.slice(i).map((other) => one * other));

/** What the products with others add for each unit that a property goes on. */
function slopeOf(index: number, offs: readonly number[], pairs: readonly number[]): number {
  let [slope, at] = [0, 0];
  for (let i = 0; i < offs.length; i += 1)
    for (let j = i; j < offs.length; j += 1, at += 1)
      if (i !== j && (i === index || j === index))
        slope += (pairs[at] ?? 0) * (offs[i === index ? j : i] as number);
  return slope;
}

/** What the sum would gain if the property were at the best of its knots. */
function lostBy(pieces: readonly number[], weights: readonly number[], slope: number): number {
  let [sum, reached, best] = [0, 0, 0];
  weights.forEach((weight, i) => {
    sum += weight * (pieces[i] ?? 0) + (slope * (pieces[i] ?? 0)) / weights.length;
    reached += weight + slope / weights.length;
    best = Math.max(best, reached);
  });
  return best - sum;
}

/** How far the property has gone through each piece between its knots, 0 to 1. */
export function piecesOf(property: Property, run: PaintRun): readonly number[] {
  const { of, knots }: Weighing = WEIGHINGS[property];
  const value = of(run);
  return knots.slice(1).map((high, i) => rise(value, knots[i] as number, high));
}

export const pieceCount = (property: Property) => WEIGHINGS[property].knots.length - 1;

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
