/**
 * Where a marked thing is in the chamber frame, as a function of the unknowns, with its derivatives.
 *
 * Model    pin        (px, py, h zp), its own px, py in each state
 *          rod        stiff, from its inner end (px - R, 0, 0) on the chamber axis to the pin's axis (px, py, 0);
 *                     R = px(released) + g is the same in every state (the swivel shortens it by less than 0.1 %)
 *          face       where the rod crosses x = 0: (0, py (1 - px/R), h zf)
 *          rod line   (px - q, py (1 - q/R), 0), q from the pin back along the rod
 *          camshaft   (cx, cy, h zc)
 *          tape       zero + v (1 + s + sv) (cos a cos b, sin a cos b, h sin b), zero = (x0, y0, h z0)
 *          tie point  (tx, ty, h tz)
 *          target     target-points.ts
 *          distance   start + {0 | d} (cos a cos b, sin a cos b, h sin b)
 *          followed   the thing + (ox, oy, 0): the spot that was followed in its place
 *          clamp band (xb, D/2 cos w, D/2 sin w)
 *          h is the hand of the wheel end: depth away from the camera is h z.
 * Assumes  the chamber axis, the pins and the camshaft's axis crossing lie in one plane, z = 0; band round and square to the axis.
 */
import type { Vec3 } from '../basics/rotation.ts';
import type { Mark } from '../marks/mark.ts';
import type { BrakeState } from '../marks/view.ts';
import type { Layout } from './layout.ts';
import { targetPoint } from './target-points.ts';
import type { WorldPoint } from './world-point.ts';

type Unknowns = ArrayLike<number>;

/** null for a mark that this problem does not use (a reference that is not given). */
export function worldPoint(
  mark: Mark,
  view: { readonly state: BrakeState; readonly index: number },
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
): WorldPoint | null {
  switch (mark.kind) {
    case 'clevis-pin':
      return pinPoint(view.state, x, layout, hand);
    case 'chamber-face':
      return facePoint(view.state, x, layout, hand);
    case 'rod-line':
      return rodPoint(view.state, layout.nuisance.get(mark.id), x, layout);
    case 'camshaft-end':
      return freePoint(layout.camshaft, x, hand);
    case 'tape-graduation':
      return tapePoint(mark.readingMm, layout.tapes[view.index], x, layout, hand);
    case 'clamp-band':
      return bandPoint(layout.nuisance.get(mark.id), x, layout);
    case 'tie-point':
      return freePoint(layout.ties.get(mark.tie), x, hand);
    case 'target-corner':
      return targetPoint(mark, layout.targets[view.index], x, layout, hand);
    case 'distance-end':
      return null;
  }
}

export function pinPoint(state: BrakeState, x: Unknowns, layout: Layout, hand: 1 | -1): WorldPoint {
  const pin = pinPlace(layout, state);
  return {
    at: [value(x, pin), value(x, pin + 1), hand * value(x, layout.pinDepth)],
    by: [
      { index: pin, d: [1, 0, 0] },
      { index: pin + 1, d: [0, 1, 0] },
      { index: layout.pinDepth, d: [0, 0, hand] },
    ],
  };
}

function facePoint(state: BrakeState, x: Unknowns, layout: Layout, hand: 1 | -1): WorldPoint {
  const pin = pinPlace(layout, state);
  const rod = rodAt(state, value(x, pin), x, layout);
  return {
    at: [0, rod.y, hand * value(x, layout.faceDepth)],
    by: [
      // q = px moves with the pin: dy/dpx gains the derivative by q.
      ...rod.by.map(({ index, dy }) => ({ index, d: [0, dy + (index === pin ? rod.yByQ : 0), 0] as Vec3 })),
      { index: layout.faceDepth, d: [0, 0, hand] },
    ],
  };
}

function rodPoint(
  state: BrakeState,
  along: number | undefined,
  x: Unknowns,
  layout: Layout,
): WorldPoint | null {
  if (along === undefined) return null;
  const pin = pinPlace(layout, state);
  const q = value(x, along);
  const rod = rodAt(state, q, x, layout);
  return {
    at: [value(x, pin) - q, rod.y, 0],
    by: [
      ...rod.by.map(({ index, dy }) => ({ index, d: [index === pin ? 1 : 0, dy, 0] as Vec3 })),
      { index: along, d: [-1, rod.yByQ, 0] },
    ],
  };
}

/** Side offset of the rod's axis at q back from the pin: y = py (1 - q/R), with the released pin's part in R kept apart. */
function rodAt(state: BrakeState, q: number, x: Unknowns, layout: Layout) {
  const pin = pinPlace(layout, state);
  const released = pinPlace(layout, layout.pins.released === undefined ? state : 'released');
  const py = value(x, pin + 1);
  const length = value(x, released) + value(x, layout.rodInner);
  const yByLength = (py * q) / (length * length);
  const by = [
    { index: pin, dy: released === pin ? yByLength : 0 },
    { index: pin + 1, dy: 1 - q / length },
    { index: layout.rodInner, dy: yByLength },
  ];
  if (released !== pin) by.push({ index: released, dy: yByLength });
  return { y: py * (1 - q / length), yByQ: -py / length, by };
}

/** A point with three unknowns of its own: x, y, depth. */
function freePoint(at: number | null | undefined, x: Unknowns, hand: 1 | -1): WorldPoint | null {
  if (at === null || at === undefined) return null;
  return {
    at: [value(x, at), value(x, at + 1), hand * value(x, at + 2)],
    by: [
      { index: at, d: [1, 0, 0] },
      { index: at + 1, d: [0, 1, 0] },
      { index: at + 2, d: [0, 0, hand] },
    ],
  };
}

function tapePoint(
  readingMm: number,
  tape: number | null | undefined,
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
): WorldPoint | null {
  if (tape === null || tape === undefined || layout.tapeSlack === null) return null;
  const length = readingMm * (1 + value(x, layout.tapeSlack) + value(x, tape + 5));
  const line = alongLine(x, tape, length, hand);
  const perSlack = scaled(line.direction, readingMm);
  return {
    at: line.at,
    by: [...line.by, { index: layout.tapeSlack, d: perSlack }, { index: tape + 5, d: perSlack }],
  };
}

/** An end of the known distance: 0 its start, 1 its end. */
export function distancePoint(
  end: 0 | 1,
  place: number | null | undefined,
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
): WorldPoint | null {
  if (place === null || place === undefined || layout.distance === null) return null;
  const line = alongLine(x, place, end * value(x, layout.distance), hand);
  return { at: line.at, by: [...line.by, { index: layout.distance, d: scaled(line.direction, end) }] };
}

/** The spot beside a point by two unknowns of its own, along x and y. */
export function besideBy({ at: [px, py, pz], by }: WorldPoint, offset: number, x: Unknowns): WorldPoint {
  return {
    at: [px + value(x, offset), py + value(x, offset + 1), pz],
    by: [...by, { index: offset, d: [1, 0, 0] }, { index: offset + 1, d: [0, 1, 0] }],
  };
}

/** A point at the given length along a straight thing: unknowns x, y, depth of its origin, angle in the plane, tilt out of it. */
function alongLine(x: Unknowns, at: number, length: number, hand: 1 | -1) {
  const [ca, sa] = [Math.cos(value(x, at + 3)), Math.sin(value(x, at + 3))];
  const [cb, sb] = [Math.cos(value(x, at + 4)), Math.sin(value(x, at + 4))];
  const direction: Vec3 = [ca * cb, sa * cb, hand * sb];
  const point: Vec3 = [
    value(x, at) + length * direction[0],
    value(x, at + 1) + length * direction[1],
    hand * value(x, at + 2) + length * direction[2],
  ];
  const by = [
    { index: at, d: [1, 0, 0] as Vec3 },
    { index: at + 1, d: [0, 1, 0] as Vec3 },
    { index: at + 2, d: [0, 0, hand] as Vec3 },
    { index: at + 3, d: scaled([-sa * cb, ca * cb, 0], length) },
    { index: at + 4, d: scaled([-ca * sb, -sa * sb, hand * cb], length) },
  ];
  return { at: point, direction, by };
}

function bandPoint(angle: number | undefined, x: Unknowns, layout: Layout): WorldPoint | null {
  if (angle === undefined || layout.band === null) return null;
  const [c, s] = [Math.cos(value(x, angle)), Math.sin(value(x, angle))];
  const radius = value(x, layout.band + 1) / 2;
  return {
    at: [value(x, layout.band), radius * c, radius * s],
    by: [
      { index: layout.band, d: [1, 0, 0] },
      { index: layout.band + 1, d: [0, c / 2, s / 2] },
      { index: angle, d: [0, -radius * s, radius * c] },
    ],
  };
}

function pinPlace(layout: Layout, state: BrakeState): number {
  const at = layout.pins[state];
  if (at === undefined) throw new Error(`Broken assumption: no unknowns for the pin in state ${state}`);
  return at;
}

function value(x: Unknowns, at: number): number {
  return x[at] as number;
}

function scaled(v: Vec3, factor: number): Vec3 {
  return [v[0] * factor, v[1] * factor, v[2] * factor];
}
