/**
 * Pictures of a rod that moves, an arm's end that turns and boards that stand still at several distances, drawn without any code of
 * the follower, with the true places in every frame. Where parts are is stated in pixels of a camera at rest.
 */
import { drawFrom } from '../../src/basics/random.ts';
import type { FollowQuestion } from '../../src/vision/follow-sight.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { specksAt } from './specks.ts';

export const WIDTH_PX = 800;
export const HEIGHT_PX = 600;

/** What happens at a time, counted in frames; parts of frames for what is blurred. */
export type Doing = {
  readonly travelPx: number;
  readonly turnRad: number;
  readonly shake: { readonly x: number; readonly y: number; readonly rollRad: number; readonly zoom: number };
  /** How far apart in depth things lie, of what the boards say. */
  readonly depth: number;
  /** Middle of a hand before it all, of this radius. */
  readonly hand: { readonly at: Point; readonly radiusPx: number } | null;
  readonly gain: number;
  readonly offset: number;
};

export const AT_REST: Doing = {
  travelPx: 0,
  turnRad: 0,
  shake: { x: 0, y: 0, rollRad: 0, zoom: 1 },
  depth: 1,
  hand: null,
  gain: 1,
  offset: 0,
};

/** near: 1 moves with the shake as the brake does, less is farther off. */
type Board = { readonly from: Point; readonly to: Point; readonly near: number; readonly seed: number };

const BOARDS: readonly Board[] = [
  { from: [560, 190], to: [720, 430], near: 1, seed: 11 },
  { from: [470, 120], to: [590, 200], near: 0.98, seed: 12 },
  { from: [120, 380], to: [430, 520], near: 0.93, seed: 13 },
  { from: [60, 60], to: [260, 240], near: 0.95, seed: 14 },
  { from: [-400, -400], to: [1200, 1000], near: 0.85, seed: 15 },
];
const ROD = { from: [250, 290] as Point, to: [620, 330] as Point, seed: 21 };
const PIN: Point = [300, 310];
const CAMSHAFT: Point = [340, 190];
const CAMSHAFT_RADIUS_PX = 45;
const FACE: Point = [590, 310];
const WAY_PX = 110;

/** The rod goes to the left. */
export const QUESTION: FollowQuestion = {
  things: [
    { name: 'pin', placePx: PIN, how: 'moves', radiusPx: 18 },
    { name: 'camshaft', placePx: CAMSHAFT, how: 'turns', radiusPx: 32 },
    { name: 'face', placePx: FACE, how: 'carried', radiusPx: 10 },
  ],
  tape: [],
  aboutPx: FACE,
  leaveOut: [
    [
      [120, 270],
      [600, 270],
      [600, 350],
      [120, 350],
    ],
    [
      [280, 130],
      [400, 130],
      [400, 250],
      [280, 250],
    ],
  ],
  reachPx: { out: [-WAY_PX, 0], back: [20, 0] },
};

/** In the order of the question. */
export function truePlaces(doing: Doing): readonly [Point, Point, Point] {
  return [
    shownAt(doing, [PIN[0] - doing.travelPx, PIN[1]], 1),
    shownAt(doing, CAMSHAFT, 1),
    shownAt(doing, FACE, 1),
  ];
}

/** Where a frame shows a spot of the arm's end that lies so far from its centre in the first picture. */
export function spotAt(doing: Doing, [dx, dy]: Point): Point {
  const [cos, sin] = [Math.cos(doing.turnRad), Math.sin(doing.turnRad)];
  return shownAt(doing, [CAMSHAFT[0] + cos * dx - sin * dy, CAMSHAFT[1] + sin * dx + cos * dy], 1);
}

/** Where a frame shows what stands still and lies at this place of the first picture. */
export function stillAt(doing: Doing, place: Point): Point {
  return shownAt(doing, place, nearOf(boardAt(place), doing));
}

const nearOf = ({ near }: Board, { depth }: Doing) => 1 - depth * (1 - near);
const boardAt = ([x, y]: Point) => BOARDS.find((board) => isOn(board, x, y)) as Board;
const isOn = ({ from, to }: { readonly from: Point; readonly to: Point }, x: number, y: number) =>
  x >= from[0] && x < to[0] && y >= from[1] && y < to[1];

function shownAt({ shake }: Doing, [x, y]: Point, near: number): Point {
  const [dx, dy] = [x - WIDTH_PX / 2, y - HEIGHT_PX / 2];
  const [c, s] = [shake.zoom * Math.cos(shake.rollRad), shake.zoom * Math.sin(shake.rollRad)];
  return [WIDTH_PX / 2 + c * dx - s * dy + near * shake.x, HEIGHT_PX / 2 + s * dx + c * dy + near * shake.y];
}

/** doings: of one instant, or of several within the time the shutter is open. */
export function scenePicture(doings: readonly Doing[], noise: number, seed: number): Gray {
  const light = new Float64Array(WIDTH_PX * HEIGHT_PX);
  for (const doing of doings) {
    const levelAt = levelsOf(doing);
    for (let row = 0, at = 0; row < HEIGHT_PX; row++)
      for (let column = 0; column < WIDTH_PX; column++, at++)
        light[at] = (light[at] as number) + levelAt(column + 0.5, row + 0.5) / doings.length;
  }
  const draw = drawFrom(seed);
  const values = Uint8Array.from(light, (level) =>
    Math.max(0, Math.min(255, Math.round(level + draw.normal(0, noise)))),
  );
  return { widthPx: WIDTH_PX, heightPx: HEIGHT_PX, values };
}

function levelsOf(doing: Doing): (x: number, y: number) => number {
  const { hand, travelPx, turnRad, gain, offset, shake } = doing;
  const [cosShake, sinShake] = [Math.cos(shake.rollRad) / shake.zoom, Math.sin(shake.rollRad) / shake.zoom];
  const [cosTurn, sinTurn] = [Math.cos(turnRad), Math.sin(turnRad)];
  /** The place of a camera at rest that is seen at x, y. */
  const seenX = (x: number, y: number, near: number) =>
    WIDTH_PX / 2 +
    cosShake * (x - WIDTH_PX / 2 - near * shake.x) +
    sinShake * (y - HEIGHT_PX / 2 - near * shake.y);
  const seenY = (x: number, y: number, near: number) =>
    HEIGHT_PX / 2 +
    cosShake * (y - HEIGHT_PX / 2 - near * shake.y) -
    sinShake * (x - WIDTH_PX / 2 - near * shake.x);
  const shareAt = (x: number, y: number) => {
    const [brakeX, brakeY] = [seenX(x, y, 1), seenY(x, y, 1)];
    const rodX = brakeX + travelPx;
    if (isOn(ROD, rodX, brakeY) && brakeX < FACE[0]) return texture(ROD.seed, rodX, brakeY, 5);
    const [dx, dy] = [brakeX - CAMSHAFT[0], brakeY - CAMSHAFT[1]];
    if (Math.hypot(dx, dy) < CAMSHAFT_RADIUS_PX)
      return texture(22, cosTurn * dx + sinTurn * dy, cosTurn * dy - sinTurn * dx, 6);
    for (const board of BOARDS) {
      const near = nearOf(board, doing);
      const [boardX, boardY] = [seenX(x, y, near), seenY(x, y, near)];
      if (isOn(board, boardX, boardY)) return texture(board.seed, boardX, boardY, 6);
    }
    throw new Error('the last board fills the picture');
  };
  return (x, y) => {
    if (hand && Math.hypot(x - hand.at[0], y - hand.at[1]) < hand.radiusPx)
      return 40 + 120 * texture(31, x - hand.at[0], y - hand.at[1], 9);
    return gain * (35 + 170 * shareAt(x, y)) + offset;
  };
}

/** 0 to 1: specks of two sizes, smooth between the knots of a lattice. */
function texture(seed: number, u: number, v: number, sizePx: number): number {
  return (
    0.6 * specksAt(seed, u / sizePx, v / sizePx) +
    0.4 * specksAt(seed + 50, u / (3 * sizePx), v / (3 * sizePx))
  );
}

/** A hand's sway and tremble, in px of the brake: a few waves that begin at rest. */
export function shaken(t: number, sizePx: number): Doing['shake'] {
  const wave = (period: number, phase: number) =>
    Math.sin((2 * Math.PI * t) / period + phase) - Math.sin(phase);
  return {
    x: sizePx * (wave(41, 0.3) + 0.35 * wave(9, 1)),
    y: sizePx * (0.8 * wave(33, 2) + 0.3 * wave(7, 0)),
    rollRad: 0.0012 * sizePx * wave(37, 1.4),
    zoom: 1 + 0.0008 * sizePx * wave(51, 0.7),
  };
}

/** 0 to 1 without a jerk. */
export function eased(t: number): number {
  const u = Math.max(0, Math.min(1, t));
  return u * u * u * (10 - 15 * u + 6 * u * u);
}
