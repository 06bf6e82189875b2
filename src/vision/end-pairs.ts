/**
 * Where the ends of clevis pin and camshaft could be, by pairs: a round place near the chamber's axis and one an arm's length from it.
 *
 * Model    the roundest places (roundness.ts) on a grid of millimetres (side-map.ts); of a pin, its end and what lies about it, seen a little farther
 *          along since that is farther from the camera; either way from the axis for a camshaft. Each pair an arm's length apart, the arm not far
 *          from square to the rod, with the clearest straight edge of an arm between them
 * Source   pins 1/2 and 5/8 in, camshafts 1 1/4 to 1 5/8 in, arms 4 1/2 to 7 in from pin to camshaft: common practice, no source
 */
import { apart, minus, type Point } from './point.ts';
import { circles, roundness } from './roundness.ts';
import { edgeAlong, type SideMap } from './side-map.ts';

/** round: what lies about the end; endRound: the pin's end itself. */
export type PinPlace = { readonly at: Point; readonly round: number; readonly endRound: number };
export type CamshaftPlace = { readonly at: Point; readonly round: number };
/** arm: its edge seen more clearly, 0 to 1. */
export type EndPair = {
  readonly pin: PinPlace;
  readonly camshaft: CamshaftPlace;
  readonly armMm: number;
  readonly turnRad: number;
  readonly arm: number;
};

/** Of a face 40 to 75 mm before the rim's middle, pins 60 to 220 mm before that; an arm's length to either side, camshafts. */
const PIN_U = [90, 290] as const;
const PIN_V = [[-28, 28]] as const;
const CAMSHAFT_U = [50, 350] as const;
const CAMSHAFT_V = [
  [-200, -76],
  [76, 200],
] as const;
const PIN_END = circles(3, 9, 1, 24);
const ABOUT_PIN = circles(10, 19, 1.5, 32);
const CAMSHAFT = circles(8, 38, 1.5, 32);
/** What lies about the pin's end is farther from the camera. */
const BEHIND_MM = 6;
const MOST_PINS = 24;
const MOST_CAMSHAFTS = 20;
/** Places nearer to each other are one. */
const ONE_MM = { pin: 4, camshaft: 10 } as const;
/** As seen: an arm that leans towards the camera is shorter. */
const ARM_MM = [92, 195] as const;
const TURN_RAD = [0.8, 2.2] as const;
/** Of the length from pin to camshaft: between eye and boss. Asides in mm. */
const STEM = [0.16, 0.76] as const;
const ASIDES_PIN = [8, 10.5, 13, 15.5, 18, 21];
const ASIDES_CAMSHAFT = [13, 16, 19, 22, 26, 30, 34];
/** Stems do not narrow towards the camshaft by more. */
const NARROWS_MM = 3;

export function endPairs(map: SideMap): readonly EndPair[] {
  const pins = firstOf(placesIn(PIN_U, PIN_V, 1).map(pinAt(map)), MOST_PINS, ONE_MM.pin, pinRound);
  const camshafts = firstOf(
    placesIn(CAMSHAFT_U, CAMSHAFT_V, 2).map((at) => ({ at, round: roundness(map, at, CAMSHAFT) })),
    MOST_CAMSHAFTS,
    ONE_MM.camshaft,
    ({ round }) => round,
  );
  return pins.flatMap((pin) =>
    camshafts.flatMap((camshaft): readonly EndPair[] => {
      const [du, dv] = minus(camshaft.at, pin.at);
      const [armMm, turnRad] = [Math.hypot(du, dv), Math.atan2(Math.abs(dv), du)];
      if (armMm < ARM_MM[0] || armMm > ARM_MM[1] || turnRad < TURN_RAD[0] || turnRad > TURN_RAD[1]) return [];
      return [{ pin, camshaft, armMm, turnRad, arm: armEdge(map, pin.at, camshaft.at) }];
    }),
  );
}

const pinAt =
  (map: SideMap) =>
  (at: Point): PinPlace => ({
    at,
    endRound: roundness(map, at, PIN_END),
    round: roundness(map, [at[0] + BEHIND_MM * map.tilt, at[1]], ABOUT_PIN),
  });

const pinRound = ({ round, endRound }: PinPlace) => round + endRound;

function placesIn(
  [from, to]: readonly [number, number],
  bands: readonly (readonly [number, number])[],
  step: number,
): readonly Point[] {
  const places: Point[] = [];
  for (let u = from; u <= to; u += step)
    for (const [low, high] of bands) for (let v = low; v <= high; v += step) places.push([u, v]);
  return places;
}

function firstOf<Place extends { readonly at: Point }>(
  all: readonly Place[],
  most: number,
  oneMm: number,
  round: (place: Place) => number,
): readonly Place[] {
  const kept: Place[] = [];
  for (const place of [...all].sort((a, b) => round(b) - round(a))) {
    if (kept.length >= most) break;
    if (kept.every(({ at }) => apart(at, place.at) >= oneMm)) kept.push(place);
  }
  return kept;
}

function armEdge(map: SideMap, pin: Point, camshaft: Point): number {
  const length = apart(camshaft, pin);
  const [au, av] = [(camshaft[0] - pin[0]) / length, (camshaft[1] - pin[1]) / length];
  const placeAt = (part: number, aside: number): Point => [
    pin[0] + part * length * au - aside * av,
    pin[1] + part * length * av + aside * au,
  ];
  let clearest = 0;
  for (const side of [-1, 1])
    for (const near of ASIDES_PIN)
      for (const far of ASIDES_CAMSHAFT)
        if (far >= near - NARROWS_MM)
          clearest = Math.max(
            clearest,
            edgeAlong(map, placeAt(STEM[0], side * near), placeAt(STEM[1], side * far)),
          );
  return clearest;
}
