/**
 * The clamp band's rim as found, on pictures with truth: how often, how far off, whether the stated uncertainty is honest; and what the rim
 * brings for the stroke. Pictures: assists-pictures.ts.
 */
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { findBand } from '../../src/vision/assist-band.ts';
import { type Ellipse, fitEllipse } from '../../src/vision/fit-ellipse.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { outsideOf } from '../vision/ellipse-side.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { strokeTable } from './assists-outlines-stroke.ts';
import { type BandDrawn, bandTable } from './assists-outlines-tables.ts';
import { numbersFrom, picturesOf } from './assists-pictures.ts';

/** Looks 0 to 18, 501 to 524 and 701 to 731 and flat stills 0 to 9, 200 to 215 and 300 to 324 were looked at while this was made; these were not. */
const LOOKS = { first: 901, count: 13 };
const FLAT = { first: 400, count: 29 };
const HAND_PX = 2;

const px = z.tuple([z.number(), z.number()]).readonly();
export const outlinesTruthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  rim: z.array(px),
});
type Truth = z.infer<typeof outlinesTruthSchema>;

export const outlinesStudy = { name: 'outlines', run: study };

function study(): string {
  const pictures = picturesOf('assists-outlines', 'assists_outlines_flat.py', outlinesTruthSchema);
  const kinds = [
    { name: 'ray-traced looks', files: pictures.looks(numbersFrom(LOOKS)) },
    { name: 'flat scenes', files: pictures.flats(FLAT) },
  ];
  const drawn = kinds.flatMap(({ name, files }) =>
    files.map(({ picture, truth }) => bandOf(grayOfFile(picture), truth, name)),
  );
  return `${bandTable(drawn)}\n\n${strokeTable()}`;
}

/** A circle seen is an ellipse: through all of its projected points it is exact. */
function rimOf({ rim, number }: Truth): Ellipse {
  const ellipse = fitEllipse(rim);
  if (!ellipse) throw new Error(`the rim of ${number} is no ellipse`);
  return ellipse;
}

/** Somewhere on the near half, as a finger would: the point of the rim farthest along from pin to face. */
function touchOf({ rim, chamberFace, clevisPin }: Truth): Point {
  const [bx, by] = [chamberFace[0] - clevisPin[0], chamberFace[1] - clevisPin[1]];
  const along = ([x, y]: Point) => x * bx + y * by;
  return rim.reduce((far, point) => (along(point) > along(far) ? point : far), clevisPin);
}

export function bandOf(gray: Gray, truth: Truth, name: string): BandDrawn {
  const draw = drawFrom(31 * truth.number + 5);
  const hand = ([x, y]: Point): Point => [x + draw.normal(0, HAND_PX), y + draw.normal(0, HAND_PX)];
  const [facePx, pinPx] = [hand(truth.chamberFace), hand(truth.clevisPin)];
  const rim = rimOf(truth);
  const began = performance.now();
  const found = findBand(gray, { facePx, pinPx, nearPx: touchOf(truth) });
  const tookMs = performance.now() - began;
  if (!found.ok) return { name, tookMs, reason: found.failure.code, found: null };
  const { ratio, uRatio, marks, rim: seen } = found.value;
  const offsPx = marks.map(({ placePx }) => outsideOf(rim, placePx));
  const centrePx = Math.hypot(seen.centre[0] - rim.centre[0], seen.centre[1] - rim.centre[1]);
  const ratioOff = ratio - rim.shortPx / rim.longPx;
  const zs = offsPx.map((off, i) => off / (marks[i]?.sigmaPx ?? 1));
  return { name, tookMs, reason: null, found: { ratioOff, uRatio, centrePx, offsPx, zs } };
}
