/**
 * Simulated things held to the wheel end: tape, printed target, known distance; in the chamber frame of scene.ts.
 *
 * Touching the pin: the plane of the blade or card passes the end of the pin, at the pin, with a gap of either sign (rust, a bent
 * edge, the pin's own play). Laid anew for each picture, the gap is new as well. Left in place, the pin moves on beneath it: the
 * gap is drawn for the middle of the stroke, and the tilt of the blade or card makes another of it at either end.
 */
import type { Draw } from '../../src/basics/random.ts';
import type { BrakeState } from '../../src/marks/view.ts';
import { CARD, MARKER_COUNT, targetCorner } from '../../src/references/target-card.ts';
import type { SceneOptions } from './scene-options.ts';
import type { P3 } from './sight.ts';
import { alongBow, BOW_MM, type Print } from './tape.ts';
import { pinBeside, type WheelEnd } from './wheel-end.ts';

const GAP_MM = 0.8;
/** Out of the pin's plane: by hand, and on the pin's end. */
const TOUCHING_TILT_RAD = 0.04;

export type TapeHold = ReturnType<typeof drawTapeHold>;

/** draw: as it was before tapes could touch; extra: what touching adds. */
export function drawTapeHold(
  draws: { readonly draw: Draw; readonly extra: Draw },
  wheelEnd: WheelEnd,
  state: BrakeState,
  options: SceneOptions,
) {
  const { draw, extra } = draws;
  const touches = options.touchesPin ?? false;
  const tilt = touches ? TOUCHING_TILT_RAD : 0.06;
  const zero = draw.uniform(-1.6, 1.6);
  // A blade on the pin's end leaves the pin's centre in sight, just beside its edge.
  const side = touches ? draw.normal(-9, 4) : draw.normal(-20, 12);
  const freeDepth = draw.normal(-15, 10);
  const [alpha, beta] = [draw.normal(0, tilt), draw.normal(0, tilt)];
  const bow = draw.normal(0, BOW_MM);
  const free = { zero, side, depth: freeDepth, alpha, beta, bow };
  if (!touches) return free;
  const [pinX] = pinBeside(wheelEnd, state, options.tapeUnmoved ?? false);
  const atZero = { ...free, depth: 0 };
  let s = pinX - zero;
  for (let round = 0; round < 4; round++) s += pinX - onBlade(atZero, s)[0];
  const depth = wheelEnd.pinDepth + extra.normal(0, GAP_MM) - onBlade(atZero, s)[2];
  return { ...free, depth };
}

type Hold = {
  readonly zero: number;
  readonly side: number;
  readonly depth: number;
  /** Turns of the chord, in the plane of motion and out of it. */
  readonly alpha: number;
  readonly beta: number;
  /** Sagitta, towards greater depth. */
  readonly bow: number;
};

/** x, y and depth of the point s along the blade, w across it. */
function onBlade({ zero, side, depth, alpha, beta, bow }: Hold, s: number, w = 0): P3 {
  const [along, out] = alongBow(bow, s);
  const [cosA, sinA, cosB, sinB] = [Math.cos(alpha), Math.sin(alpha), Math.cos(beta), Math.sin(beta)];
  const level = along * cosB - out * sinB;
  return [zero + level * cosA - w * sinA, side + level * sinA + w * cosA, depth + along * sinB + out * cosB];
}

/** Readings of the graduations out to a little beyond the pin. */
export function readingsTo(pinX: number, stepMm: number): readonly number[] {
  return Array.from({ length: Math.ceil((pinX + 40) / stepMm) - 1 }, (_, i) => (i + 1) * stepMm);
}

export function tapeGraduations(hold: TapeHold, hand: 1 | -1, print: Print, readingsMm: readonly number[]) {
  return readingsMm.map((readingMm) => {
    const [x, y, depth] = onBlade(hold, print(readingMm));
    const at: P3 = [x, y, hand * depth];
    return { at, readingMm };
  });
}

export type TapeEdge = ReturnType<typeof drawTapeEdge>;

/** The strip is cambered in its own plane; that, and the blade's bow, bend the edge as the camera sees it. */
export function drawTapeEdge(draw: Draw) {
  const across = draw.uniform(0, 1) < 0.5 ? draw.uniform(2, 6) : draw.uniform(-22, -10);
  return {
    across,
    camber: draw.normal(0, 0.05),
    middle: draw.uniform(100, 200),
    beyondPin: draw.uniform(60, 160),
  };
}

/** Points along it, out to where a hand or the case hides it. */
export function tapeEdgePoints(
  draw: Draw,
  hold: TapeHold,
  edge: TapeEdge,
  { hand, pinX, count }: { readonly hand: 1 | -1; readonly pinX: number; readonly count: number },
): P3[] {
  const [from, to] = [5, pinX + edge.beyondPin];
  return Array.from({ length: count }, (_, i): P3 => {
    const s = from + ((to - from) * (i + draw.uniform(0.2, 0.8))) / count;
    const bent = ((s - edge.middle) / 100) ** 2;
    const [x, y, depth] = onBlade(hold, s, edge.across + edge.camber * bent);
    return [x, y, hand * depth];
  });
}

/** The card along the rod on the side away from the camshaft, its lower edge at the pin's centre line. */
export function drawTargetCorners(
  draw: Draw,
  wheelEnd: WheelEnd,
  state: BrakeState,
  options: SceneOptions & { readonly printScale: number },
) {
  const { touchesPin: touches = false, targetUnmoved = false, printScale } = options;
  const { hand } = wheelEnd;
  const [pinX, pinY] = pinBeside(wheelEnd, state, targetUnmoved);
  // Where on the card the pin is: the card ends short of the chamber face.
  const reach = Math.min(CARD.widthMm / 2 + draw.uniform(-30, 30), pinX - 6);
  const edge = draw.normal(0, 1.5);
  const turn = draw.normal(0, 0.06);
  const tilt = touches ? TOUCHING_TILT_RAD : 0.05;
  const [b, c] = [draw.normal(0, tilt), draw.normal(0, tilt)];
  // Edges of the card in (x, picture's y, depth): along it, and down it as printed. Above the rod it lies upright, below it turned.
  const up = hand;
  const along: P3 = [up * Math.cos(turn) * Math.cos(b), up * Math.sin(turn) * Math.cos(b), up * Math.sin(b)];
  const square: P3 = [-up * Math.sin(turn), up * Math.cos(turn), 0];
  const normal = cross(along, square);
  const down: P3 = mix(square, Math.cos(c), normal, Math.sin(c));
  const outward = cross(along, down);
  const gap = touches ? draw.normal(0, GAP_MM) : wheelEnd.pinDepth - draw.normal(-15, 10);
  const beneath: P3 = [
    pinX - gap * outward[0],
    hand * pinY - gap * outward[1],
    wheelEnd.pinDepth - gap * outward[2],
  ];
  const pinOnCard = up > 0 ? reach : CARD.widthMm - reach;
  const corners: { readonly at: P3; readonly marker: number; readonly corner: number }[] = [];
  for (let marker = 0; marker < MARKER_COUNT; marker++)
    for (let corner = 0; corner < 4; corner++) {
      const printed = targetCorner(marker, corner);
      if (!printed) throw new Error('The card lacks a corner');
      const [u, v] = [printScale * (printed.uMm - pinOnCard), printScale * (printed.vMm - edge)];
      const [x, y, depth] = mix(along, u, down, v);
      corners.push({
        at: [beneath[0] + x, hand * (beneath[1] + y), hand * (beneath[2] + depth)],
        marker,
        corner,
      });
    }
  return corners;
}

export function drawDistanceEnds(draw: Draw, hand: 1 | -1): readonly [P3, P3] {
  const begin: P3 = [draw.uniform(-20, 40), draw.uniform(-70, -30), hand * draw.normal(-10, 15)];
  const [angle, tilt] = [draw.normal(0, 0.3), draw.normal(0, 0.1)];
  const d = 150;
  const end: P3 = [
    begin[0] + d * Math.cos(angle) * Math.cos(tilt),
    begin[1] + d * Math.sin(angle) * Math.cos(tilt),
    begin[2] + hand * d * Math.sin(tilt),
  ];
  return [begin, end];
}

function mix(a: P3, p: number, b: P3, q: number): P3 {
  return [p * a[0] + q * b[0], p * a[1] + q * b[1], p * a[2] + q * b[2]];
}

function cross(a: P3, b: P3): P3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
