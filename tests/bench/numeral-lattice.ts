/** The lattice of a photographed tape, measured as if two of its whole inches had been named, and where its digits truly lie on the blade laid flat. */
import type { Draw } from '../../src/basics/random.ts';
import { type MeasuredLattice, measureLattice } from '../../src/vision/assist-lattice.ts';
import { type BladeStrip, bladePlace, STRIP_STEP_MM } from '../../src/vision/blade-strip.ts';
import type { DigitWindow, Turn } from '../../src/vision/digit-window.ts';
import type { Point } from '../../src/vision/point.ts';
import type { TapePhoto } from './numeral-pictures.ts';
import { INCH_MM, type Print, type PrintedDigit } from './numeral-print.ts';

/** Places on the blade count from here: a count of no meaning, as where nothing was named. */
export const FIRST_INCH = 20;

export function latticeOn(draw: Draw, photo: TapePhoto, print: Print): MeasuredLattice | null {
  const acrossMm = print.bothEdges && draw.uniform(0, 1) < 0.5 ? print.widthMm - 2 : 2;
  const named = [1, print.inches - 1].map((inches) => {
    const [x, y] = photo.placeOf(inches * INCH_MM, acrossMm);
    return {
      placePx: [x + draw.normal(0, 1), y + draw.normal(0, 1)] as const,
      sigmaPx: 1,
      readingMm: (FIRST_INCH + inches) * INCH_MM,
    };
  });
  const [low, high] = named as [(typeof named)[0], (typeof named)[0]];
  const found = measureLattice(photo.gray, [low, high]);
  return found.ok ? found.value : null;
}

export type TrueWindow = DigitWindow & { readonly turn: Turn; readonly digit: number };

export function windowOf(
  { digit, alongMm, acrossMm, heightMm, turn }: PrintedDigit,
  photo: TapePhoto,
  lattice: MeasuredLattice,
  strip: BladeStrip,
): TrueWindow {
  const up: Point = (
    [
      [0, -1],
      [1, 0],
      [0, 1],
      [-1, 0],
    ] as const
  )[turn];
  const flat = (by: number): Point => {
    const along = alongMm + by * up[0] * heightMm;
    return inStrip(lattice, strip, photo.placeOf(along, acrossMm + by * up[1] * heightMm), [
      FIRST_INCH * INCH_MM + along,
      12,
    ]);
  };
  const [foot, top] = [flat(-0.5), flat(0.5)];
  const [dx, dy] = [top[0] - foot[0], top[1] - foot[1]];
  const seenTurn = Math.abs(dy) > Math.abs(dx) ? (dy < 0 ? 0 : 2) : dx > 0 ? 1 : 3;
  return {
    digit,
    x: (foot[0] + top[0]) / 2,
    y: (foot[1] + top[1]) / 2,
    heightMm: Math.hypot(dx, dy) * STRIP_STEP_MM,
    turn: seenTurn,
  };
}

/** Column and row; by Newton's method with differences. */
function inStrip(lattice: MeasuredLattice, strip: BladeStrip, place: Point, start: Point): Point {
  let [reading, across] = start;
  for (let round = 0; round < 12; round++) {
    const [x, y] = bladePlace(lattice, reading, across);
    const [ax, ay] = bladePlace(lattice, reading + 0.1, across);
    const [bx, by] = bladePlace(lattice, reading, across + 0.1);
    const [a, b, c, d] = [(ax - x) / 0.1, (bx - x) / 0.1, (ay - y) / 0.1, (by - y) / 0.1];
    const [ex, ey] = [place[0] - x, place[1] - y];
    reading += (d * ex - b * ey) / (a * d - b * c);
    across += (a * ey - c * ex) / (a * d - b * c);
  }
  return [(reading - strip.firstMm) / strip.stepMm, across / STRIP_STEP_MM];
}
