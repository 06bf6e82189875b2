/**
 * The clamp band's rim as found, on pictures with truth: how often, how far off, whether
 * the stated uncertainty is honest; and what the rim brings for the stroke. Ray-traced looks are those that --only marks has made; flat ones
 * are made by assists_outlines_flat.py (python3-opencv) and kept in node_modules/.cache/assists-outlines.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { type Arc, arcAngle, arcNormal, arcPoint } from '../../src/vision/arc.ts';
import { findBand } from '../../src/vision/assist-band.ts';
import { fitEllipse } from '../../src/vision/fit-ellipse.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { looksKept } from './assists-looks.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { strokeTable } from './assists-outlines-stroke.ts';
import { type BandDrawn, bandTable } from './assists-outlines-tables.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-outlines', import.meta.url));
/** Looks 0 to 19 and flat stills 0 to 9 were looked at while these were made; these were not. */
const FIRST_LOOK = 100;
const FLAT = { first: 100, count: 31 };
const HAND_PX = 2;

const px = z.tuple([z.number(), z.number()]).readonly();
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  rim: z.array(px),
});
type Truth = z.infer<typeof truthSchema>;
type Known = { readonly picture: string; readonly truth: Truth };

export const outlinesStudy = { name: 'outlines', run: study };

function study(): string {
  mkdirSync(FOLDER, { recursive: true });
  const kinds = [
    { name: 'ray-traced looks', files: looksKept(FIRST_LOOK) },
    { name: 'flat scenes', files: flats() },
  ];
  const drawn = kinds.flatMap(({ name, files }) =>
    files.map(({ picture, truth }) => {
      const gray = grayOfFile(picture);
      const draw = drawFrom(31 * truth.number + 5);
      const hand = ([x, y]: Point): Point => [x + draw.normal(0, HAND_PX), y + draw.normal(0, HAND_PX)];
      const [facePx, pinPx] = [hand(truth.chamberFace), hand(truth.clevisPin)];
      return bandOf(gray, truth, facePx, pinPx, name);
    }),
  );
  return `${bandTable(drawn)}\n\n${strokeTable()}`;
}

const known = (number: number): readonly Known[] => {
  const [picture, file] = [`${FOLDER}/flat-${number}.pgm`, `${FOLDER}/flat-${number}.json`];
  return existsSync(picture) && existsSync(file)
    ? [{ picture, truth: truthSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) }]
    : [];
};
const numbers = Array.from({ length: FLAT.count }, (_, i) => FLAT.first + i);

function flats(): readonly Known[] {
  const script = fileURLToPath(new URL('./assists_outlines_flat.py', import.meta.url));
  if (numbers.every((number) => known(number).length === 0))
    execFileSync('/usr/bin/python3', [script, FOLDER, String(FLAT.first), String(FLAT.count)], {
      stdio: 'inherit',
    });
  return numbers.flatMap(known);
}

/** A circle seen is an ellipse: through all of its projected points it is exact. */
function rimOf({ rim, chamberFace, clevisPin, number }: Truth): Arc {
  const ellipse = fitEllipse(rim);
  if (!ellipse) throw new Error(`the rim of ${number} is no ellipse`);
  const [bx, by] = [chamberFace[0] - clevisPin[0], chamberFace[1] - clevisPin[1]];
  const turn = ellipse.angleRad + Math.PI / 2;
  const isBack = Math.cos(turn) * bx + Math.sin(turn) * by > 0;
  return { ...ellipse, turnRad: isBack ? turn : turn + Math.PI };
}

function bandOf(gray: Gray, truth: Truth, facePx: Point, pinPx: Point, name: string): BandDrawn {
  const rim = rimOf(truth);
  const began = performance.now();
  const found = findBand(gray, { facePx, pinPx, nearPx: arcPoint(rim, 0.4) });
  const tookMs = performance.now() - began;
  if (!found.ok) return { name, tookMs, reason: found.failure.code, found: null };
  const { ratio, uRatio, marks, rim: seen } = found.value;
  const zs = marks.map(({ placePx: [x, y], sigmaPx }) => {
    const w = arcAngle(rim, [x, y]);
    const [[ax, ay], [nx, ny]] = [arcPoint(rim, w), arcNormal(rim, w)];
    return ((x - ax) * nx + (y - ay) * ny) / sigmaPx;
  });
  const centrePx = Math.hypot(seen.centre[0] - rim.centre[0], seen.centre[1] - rim.centre[1]);
  const ratioOff = ratio - rim.shortPx / rim.longPx;
  return { name, tookMs, reason: null, found: { ratioOff, uRatio, centrePx, zs } };
}
