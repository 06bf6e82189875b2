/**
 * The rings of a clamp band led to their edges: the rim towards the rod, the other rim, and where its flank ends on the housing.
 *
 * Model    edges along the rings (ring-edges.ts) and the best axis and rings through them (fit-coaxial.ts), again and again, nearer each time; about
 *          the axis then found, the ring inside and before the rim that slopes follow best joins as the flank's end. What is no edge of
 *          its own is dropped: both rims must stay
 *          length: of the good places, each how near it lies and how steep it is, less what any curve gets, times the radius; of all rings
 *          together; less of it the odder focal length and sizes are
 *          larger and smaller ones with the same vertex and curve there are tried from what was found, while the length grows
 *          widths over half the band's diameter, 80 to 118 mm: bands are 15 to 25 mm wide, flanks 4 to 18 mm high and up to 12 deep
 * Fails    null where one of the rims is no edge
 */
import { ringScore } from './climb-band.ts';
import { type Axis, opennessOf, type Ring, ringAt, tiltFor } from './coaxial.ts';
import { type Coaxial, type CoaxialFit, fitCoaxial, ringsOf, U_ALIKE, U_LOG_FOCAL } from './fit-coaxial.ts';
import type { Gray } from './gray.ts';
import { apart } from './point.ts';
import { type EdgePlace, edgesAlong, PIECES } from './ring-edges.ts';
import type { Slopes } from './slopes.ts';

export type Led = {
  readonly coaxial: Coaxial;
  readonly fit: CoaxialFit;
  readonly seen: readonly (readonly EdgePlace[])[];
  readonly lengthPx: number;
};
export type Sought = {
  readonly gray: Gray;
  readonly slopes: Slopes;
  readonly focalPx: number;
  readonly lengthPx: number;
};

const END_RAD = 1.35;
/** While it is still far off, the ends lie too far off. */
const FIRST_END_RAD = 1.25;
const FAR_PX = 3;
const OPEN = [0.03, 0.85] as const;
const WIDTH = [0.09, 0.36] as const;
const RIM = { share: 0.5, spreadPx: 0.8 } as const;
const FLANK = { share: 0.55, spreadPx: 0.6, behind: [-0.16, 0.03], size: [0.77, 0.975] } as const;
/** Nearer to the rim it is that one's shadow. */
const FLANK_APART_PX = 5;
const LEAST_SCORE = 0.2;
/** Twice the prior's (fit-coaxial.ts). */
const MOST_LOG_FOCAL = 0.3;
/** Sum of squares of what is odd, each over its prior's width (fit-coaxial.ts), from which a way counts for a third. */
const MUCH_ODD = 16;
const GOOD_PX = 0.5;
const CLEAR_STEEP = 4;
const ANY_CURVE = 0.25;

export function leadBand(sought: Sought, start: Coaxial): Led | null {
  const first = Math.max(3, 0.013 * sought.lengthPx);
  return leadAll(sought, start, [first, 0.75 * first, Math.max(2.5, 0.5 * first), 2.5, 2.2]);
}

const STRETCHES = [1.05, 1.12, 1.25, 0.95, 0.88];
const MOST_STRETCHES = 5;
const LONGER = 1.01;

export function stretchedBand(sought: Sought, start: Led): Led {
  let best = start;
  for (let round = 0; round < MOST_STRETCHES; round++) {
    const from = best;
    const longer = STRETCHES.map((by) => stretched(from.coaxial, by))
      .flatMap((tried) => (tried && leadAll(sought, tried, [3, 2.5, 2.2])) ?? [])
      .find(({ lengthPx }) => lengthPx > LONGER * from.lengthPx);
    if (!longer) break;
    best = longer;
  }
  return best;
}

function leadAll(sought: Sought, start: Coaxial, reachesPx: readonly number[]): Led | null {
  const rims = settle(sought, start, reachesPx);
  if (!rims || !isEdge(rims, 0, RIM) || !isEdge(rims, 1, RIM)) return null;
  const all = settle(sought, flankOf(sought, rims.coaxial) ?? rims.coaxial, [2, 2]);
  return all && isEdge(all, 0, RIM) && isEdge(all, 1, RIM) && isUsual(sought, all) ? all : null;
}

/** Edges of two things are rings about one axis only for an odd camera. */
const isUsual = ({ focalPx }: Sought, { coaxial }: Led) =>
  Math.abs(Math.log(coaxial.axis.focalPx / focalPx)) < MOST_LOG_FOCAL;

function settle(sought: Sought, start: Coaxial, reachesPx: readonly number[]): Led | null {
  let led: Led | null = null;
  for (const reachPx of reachesPx) {
    led = once(sought, led?.coaxial ?? start, reachPx);
    if (!led) return null;
  }
  return led;
}

function once({ gray, focalPx }: Sought, start: Coaxial, reachPx: number): Led | null {
  const endRad = reachPx > FAR_PX ? FIRST_END_RAD : END_RAD;
  const seen = ringsOf(start).map((ring) => edgesAlong(gray, start.axis, ring, { reachPx, endRad }));
  const fit = fitCoaxial(start, seen, focalPx);
  if (!fit || !isPossible(fit.coaxial)) return null;
  const lengths = seen.map((places, r) => {
    const good = places.reduce((sum, { steep }, i) => {
      const off = (fit.residuals[r]?.[i] as number) / GOOD_PX;
      return sum + Math.exp(-off * off) * Math.min(1, steep / CLEAR_STEEP);
    }, 0);
    return (ringsOf(start)[r] as Ring).radius * (good / PIECES - ANY_CURVE);
  });
  const lengthPx = likely(fit.coaxial, focalPx) * lengths.reduce((sum, each) => sum + each, 0);
  return { coaxial: fit.coaxial, fit, seen, lengthPx };
}

/** 1 for rims of one size before the usual camera. What follows edges of other things needs both to be odd. */
function likely({ axis, rings: [rim, other] }: Coaxial, focalPx: number): number {
  const odd =
    ((other.radius / rim.radius - 1) / U_ALIKE) ** 2 + (Math.log(axis.focalPx / focalPx) / U_LOG_FOCAL) ** 2;
  return Math.exp(-odd / MUCH_ODD);
}

function isPossible({ axis, rings }: Coaxial): boolean {
  const open = opennessOf(axis);
  if (!(open > OPEN[0] && open < OPEN[1])) return false;
  const [rim, other] = rings;
  const width = other.behind / rim.radius;
  return width > WIDTH[0] && width < WIDTH[1];
}

const isGood = (off: number, spread: number) => Math.abs(off) < Math.max(0.8, 2.5 * spread);

/** Which edges of the r-th ring lie on it. */
export const onRing = ({ seen, fit }: Led, r: number): readonly EdgePlace[] =>
  (seen[r] ?? []).filter((_, i) => isGood(fit.residuals[r]?.[i] as number, fit.spreads[r] as number));

const isEdge = (led: Led, r: number, { share, spreadPx }: { share: number; spreadPx: number }) =>
  onRing(led, r).length > share * PIECES && (led.fit.spreads[r] as number) < spreadPx;

function flankOf(sought: Sought, band: Coaxial): Coaxial | null {
  const start = flankBySlopes(sought.slopes, band);
  if (!start) return null;
  const led = settle(sought, { ...band, rings: [band.rings[0], band.rings[1], start] }, [3, 2.2, 2]);
  const flank = led?.coaxial.rings[2];
  if (!led || !flank || !isEdge(led, 2, FLANK)) return null;
  const [rim] = led.coaxial.rings;
  const [behind, size] = [flank.behind / rim.radius, flank.radius / rim.radius];
  const fits =
    behind > FLANK.behind[0] && behind < FLANK.behind[1] && size > FLANK.size[0] && size < FLANK.size[1];
  return fits ? led.coaxial : null;
}

function flankBySlopes(slopes: Slopes, { axis, rings }: Coaxial): Ring | null {
  const [rim] = rings;
  const vertex = ringAt(axis, rim, 0).at;
  let [found, most]: [Ring | null, number] = [null, LEAST_SCORE];
  for (let behind = -0.15; behind < 0.03; behind += 0.01)
    for (let size = 0.78; size < 0.966; size += 0.0125) {
      const ring = { behind: behind * rim.radius, radius: size * rim.radius };
      const { at } = ringAt(axis, ring, 0);
      if (apart(at, vertex) < FLANK_APART_PX) continue;
      const score = ringScore(slopes, axis, ring);
      if (score > most) [found, most] = [ring, score];
    }
  return found;
}

/** Both rims larger and more open, about the same vertices: near these they look the same. */
function stretched({ axis, rings: [rim, other] }: Coaxial, by: number): Coaxial | null {
  const { foot, focalPx, turnRad, tiltRad } = axis;
  const tilt = tiltFor(axis, by * opennessOf(axis));
  if (!Number.isFinite(tilt)) return null;
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const out = rim.radius * (Math.sin(tiltRad) - by * Math.sin(tilt));
  const depth = focalPx + rim.radius * (by * Math.cos(tilt) - Math.cos(tiltRad));
  const scale = focalPx / depth;
  const next: Axis = {
    ...axis,
    foot: [scale * (foot[0] + out * c), scale * (foot[1] + out * s)],
    tiltRad: tilt,
  };
  const move = ({ behind, radius }: Ring): Ring => {
    const more = radius - rim.radius;
    const seen = behind * Math.cos(tiltRad) + more * Math.sin(tiltRad) - by * more * Math.sin(tilt);
    return { behind: (scale * seen) / Math.cos(tilt), radius: scale * by * radius };
  };
  return { axis: next, rings: [move(rim), move(other)] };
}
