/**
 * Where a marked thing is in the chamber frame, as a function of the unknowns, with its derivatives.
 *
 * Model    pin        (px, py, h zp), its own px, py in each state
 *          rod        stiff, from its inner end (px - R, 0, 0) on the chamber axis to the pin's axis (px, py, 0);
 *                     R = px(released) + g is the same in every state (the swivel shortens it by less than 0.1 %)
 *          face       where the rod crosses x = 0: (0, py (1 - px/R), h zf)
 *          rod line   (px - q, py (1 - q/R), 0), q from the pin back along the rod
 *          camshaft   (cx, cy, h zc)
 *          tape       tape-point.ts; its edge: tape-edge.ts
 *          tie point  (tx, ty, h tz)
 *          target     target-points.ts
 *          distance   start + {0 | d} (cos a cos b, sin a cos b, h sin b)
 *          followed   the thing + (ox, oy, 0): the spot that was followed, or found again, in its place; of the camshaft, which turns
 *                     with the arm, the thing + ox a + oy b, a from the camshaft to the pin in that state, b square to it
 *          clamp band (xb, D/2 cos w, D/2 sin w)
 *          h is the hand of the wheel end: depth away from the camera is h z.
 * Assumes  the chamber axis, the pins and the camshaft's axis crossing lie in one plane, z = 0; band round and square to the axis.
 */
import type { Mark } from '../marks/mark.ts';
import type { BrakeState } from '../marks/view.ts';
import type { Layout } from './layout.ts';
import { tapeEdgePoint } from './tape-edge.ts';
import { tapePoint } from './tape-point.ts';
import { targetPoint } from './target-points.ts';
import { WorldPoint } from './world-point.ts';

type Unknowns = ArrayLike<number>;

/** null for a mark that this problem does not use (a reference that is not given). into: overwritten and returned. */
export function worldPoint(
  mark: Mark,
  view: { readonly state: BrakeState; readonly index: number },
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
  into: WorldPoint = new WorldPoint(),
): WorldPoint | null {
  switch (mark.kind) {
    case 'clevis-pin':
      return freePoint(pinPlace(layout, view.state), layout.pinDepth, x, hand, into);
    case 'chamber-face':
      return facePoint(view.state, x, layout, hand, into);
    case 'rod-line':
      return rodPoint(view.state, layout.nuisance.get(mark.id), x, layout, into);
    case 'camshaft-end':
      return ownPoint(layout.camshaft, x, hand, into);
    case 'tape-graduation':
      return graduation(mark.readingMm, layout.tapes[view.index], x, layout, hand, into);
    case 'tape-edge':
      return edgePoint(mark.id, view.index, x, layout, hand, into);
    case 'clamp-band':
      return bandPoint(layout.nuisance.get(mark.id), x, layout, into);
    case 'tie-point':
      return ownPoint(layout.ties.get(mark.tie), x, hand, into);
    case 'target-corner':
      return targetPoint(mark, layout.targets[view.index], x, layout, hand, into);
    case 'distance-end':
      return null;
  }
}

function facePoint(
  state: BrakeState,
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint {
  const pin = pinPlace(layout, state);
  const q = value(x, pin);
  into.place(0, rodY(state, q, x, layout), hand * value(x, layout.faceDepth));
  // q = px moves with the pin: dy/dpx gains the derivative by q.
  addRodY(state, q, x, layout, { pinX: 0, pinYByQ: 1 }, into);
  into.by(layout.faceDepth, 0, 0, hand);
  return into;
}

function rodPoint(
  state: BrakeState,
  along: number | undefined,
  x: Unknowns,
  layout: Layout,
  into: WorldPoint,
): WorldPoint | null {
  if (along === undefined) return null;
  const pin = pinPlace(layout, state);
  const q = value(x, along);
  into.place(value(x, pin) - q, rodY(state, q, x, layout), 0);
  addRodY(state, q, x, layout, { pinX: 1, pinYByQ: 0 }, into);
  into.by(along, -1, rodYByQ(state, x, layout), 0);
  return into;
}

/** Side offset of the rod's axis at q back from the pin: y = py (1 - q/R). */
function rodY(state: BrakeState, q: number, x: Unknowns, layout: Layout): number {
  return value(x, pinPlace(layout, state) + 1) * (1 - q / rodLength(state, x, layout));
}

function rodYByQ(state: BrakeState, x: Unknowns, layout: Layout): number {
  return -value(x, pinPlace(layout, state) + 1) / rodLength(state, x, layout);
}

function rodLength(state: BrakeState, x: Unknowns, layout: Layout): number {
  return value(x, releasedPin(layout, state)) + value(x, layout.rodInner);
}

function releasedPin(layout: Layout, state: BrakeState): number {
  return pinPlace(layout, layout.pins.released === undefined ? state : 'released');
}

/** Derivatives of a point on the rod, the released pin's part in R kept apart: pinX of its x by the pin's, and how far q follows px. */
function addRodY(
  state: BrakeState,
  q: number,
  x: Unknowns,
  layout: Layout,
  { pinX, pinYByQ }: { readonly pinX: number; readonly pinYByQ: number },
  into: WorldPoint,
): void {
  const pin = pinPlace(layout, state);
  const released = releasedPin(layout, state);
  const length = rodLength(state, x, layout);
  const yByLength = (value(x, pin + 1) * q) / (length * length);
  into.by(pin, pinX, (released === pin ? yByLength : 0) + pinYByQ * rodYByQ(state, x, layout), 0);
  into.by(pin + 1, 0, 1 - q / length, 0);
  into.by(layout.rodInner, 0, yByLength, 0);
  if (released !== pin) into.by(released, 0, yByLength, 0);
}

/** A point with three unknowns of its own: x, y, depth. */
function ownPoint(
  at: number | null | undefined,
  x: Unknowns,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint | null {
  return at === null || at === undefined ? null : freePoint(at, at + 2, x, hand, into);
}

function freePoint(at: number, depth: number, x: Unknowns, hand: 1 | -1, into: WorldPoint): WorldPoint {
  into.place(value(x, at), value(x, at + 1), hand * value(x, depth));
  into.by(at, 1, 0, 0);
  into.by(at + 1, 0, 1, 0);
  into.by(depth, 0, 0, hand);
  return into;
}

function graduation(
  readingMm: number,
  tape: number | null | undefined,
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint | null {
  const slack = layout.tapeSlack;
  if (tape === null || tape === undefined || slack === null) return null;
  return tapePoint(readingMm, { tape, slack }, x, hand, into);
}

function edgePoint(
  markId: string,
  viewIndex: number,
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint | null {
  const [tape, edge, along] = [
    layout.tapes[viewIndex],
    layout.tapeEdges[viewIndex],
    layout.nuisance.get(markId),
  ];
  if (typeof tape !== 'number' || typeof edge !== 'number' || along === undefined) return null;
  return tapeEdgePoint({ tape, edge, along }, x, hand, into);
}

/** An end of the known distance: 0 its start, 1 its end. */
export function distancePoint(
  end: 0 | 1,
  place: number | null | undefined,
  x: Unknowns,
  layout: Layout,
  hand: 1 | -1,
  into: WorldPoint = new WorldPoint(),
): WorldPoint | null {
  if (place === null || place === undefined || layout.distance === null) return null;
  alongLine(x, place, end * value(x, layout.distance), hand, into);
  byLength(x, place, end, hand, layout.distance, into);
  return into;
}

/** The spot beside a point by two unknowns of its own, along x and y: in place. */
export function besideBy(point: WorldPoint, offset: number, x: Unknowns): WorldPoint {
  point.at[0] += value(x, offset);
  point.at[1] += value(x, offset + 1);
  point.by(offset, 1, 0, 0);
  point.by(offset + 1, 0, 1, 0);
  return point;
}

/** As besideBy, of the camshaft in the state of that pin. */
export function besideOnArm(
  point: WorldPoint,
  offset: number,
  x: Unknowns,
  { camshaft, pin }: { readonly camshaft: number; readonly pin: number },
): WorldPoint {
  const [dx, dy] = [value(x, pin) - value(x, camshaft), value(x, pin + 1) - value(x, camshaft + 1)];
  const length = Math.hypot(dx, dy) || 1;
  const [c, s] = [dx / length, dy / length];
  const [ox, oy] = [value(x, offset), value(x, offset + 1)];
  const [u, v] = [ox * c - oy * s, ox * s + oy * c];
  point.at[0] += u;
  point.at[1] += v;
  point.by(offset, c, s, 0);
  point.by(offset + 1, -s, c, 0);
  // The arm turns by (-s, c) / length of what the pin moves by, and as much the other way by the camshaft.
  for (const [at, turn] of [
    [pin, -s / length],
    [pin + 1, c / length],
    [camshaft, s / length],
    [camshaft + 1, -c / length],
  ] as const)
    point.byMore(at, -v * turn, u * turn, 0);
  return point;
}

/** A point at the given length along a straight thing: unknowns x, y, depth of its origin, angle in the plane, tilt out of it. */
function alongLine(x: Unknowns, at: number, length: number, hand: 1 | -1, into: WorldPoint): void {
  const [ca, sa] = [Math.cos(value(x, at + 3)), Math.sin(value(x, at + 3))];
  const [cb, sb] = [Math.cos(value(x, at + 4)), Math.sin(value(x, at + 4))];
  into.place(
    value(x, at) + length * ca * cb,
    value(x, at + 1) + length * sa * cb,
    hand * (value(x, at + 2) + length * sb),
  );
  into.by(at, 1, 0, 0);
  into.by(at + 1, 0, 1, 0);
  into.by(at + 2, 0, 0, hand);
  into.by(at + 3, -length * sa * cb, length * ca * cb, 0);
  into.by(at + 4, -length * ca * sb, -length * sa * sb, length * hand * cb);
}

/** Of alongLine's point by an unknown that its length follows by the factor. */
function byLength(
  x: Unknowns,
  at: number,
  factor: number,
  hand: 1 | -1,
  index: number,
  into: WorldPoint,
): void {
  const [a, b] = [value(x, at + 3), value(x, at + 4)];
  const flat = factor * Math.cos(b);
  into.by(index, flat * Math.cos(a), flat * Math.sin(a), factor * hand * Math.sin(b));
}

function bandPoint(
  angle: number | undefined,
  x: Unknowns,
  layout: Layout,
  into: WorldPoint,
): WorldPoint | null {
  if (angle === undefined || layout.band === null) return null;
  const [c, s] = [Math.cos(value(x, angle)), Math.sin(value(x, angle))];
  const radius = value(x, layout.band + 1) / 2;
  into.place(value(x, layout.band), radius * c, radius * s);
  into.by(layout.band, 1, 0, 0);
  into.by(layout.band + 1, 0, c / 2, s / 2);
  into.by(angle, 0, -radius * s, radius * c);
  return into;
}

function pinPlace(layout: Layout, state: BrakeState): number {
  const at = layout.pins[state];
  if (at === undefined) throw new Error(`Broken assumption: no unknowns for the pin in state ${state}`);
  return at;
}

function value(x: Unknowns, at: number): number {
  return x[at] as number;
}
