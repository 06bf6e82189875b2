/**
 * The push rod's middle line as found from its edges, on pictures with truth: how often, how far off, whether the stated uncertainty is honest, and
 * whether nothing is found where no rod is. Pictures as in assists-outlines.ts, of numbers of their own; the
 * flat scenes have a round rod (assists_rod_flat.py).
 */
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { findRod } from '../../src/vision/assist-rod.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { dot, minus, type Point } from '../../src/vision/point.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { type Known, numbersFrom, picturesOf } from './assists-pictures.ts';
import { type RodAsked, rodTable } from './assists-rod-tables.ts';

/**
 * Looks 1, 701 to 731 and 901 to 913 and flat scenes 0 to 11 were looked at while this was made; these were not. All but the last were judged once
 * before how good a pair must be, and where it must begin, was set anew, on the pictures that were looked at. Every fourth look has no tape.
 */
const LOOKS = [
  ...numbersFrom({ first: 200, count: 15 }).filter((number) => number % 4 !== 3),
  ...[1501, 1502, 1505, 1506, 1508, 1509, 1510, 1512, 1513, 1514],
];
const FLAT_BEFORE = { first: 300, count: 22 };
const FLAT = { first: 322, count: 22 };
const HAND_PX = 2;
/** A graduation as its assist finds it, and where on its stroke. */
const TAPE_PX = 0.3;
const ON_STROKE = 3;
/** The least that is told from the truth. */
const WRONG_PX = 1;

const px = z.tuple([z.number(), z.number()]).readonly();
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  rodLine: z.array(px),
  tapeGraduations: z.array(z.object({ inches: z.number(), strokePx: z.array(px) })),
});
type Truth = z.infer<typeof truthSchema>;

const NO_ROD = 'all, asked across the rod: none is there';

export const rodStudy = { name: 'rod', run: study };

export const rodPictures = () => picturesOf('assists-rod', 'assists_rod_flat.py', truthSchema);

function study(): string {
  const pictures = rodPictures();
  const kinds = [
    { name: 'ray-traced looks, judged before', files: pictures.looks(LOOKS) },
    { name: 'flat scenes, judged before', files: pictures.flats(FLAT_BEFORE) },
    { name: 'flat scenes', files: pictures.flats(FLAT) },
  ];
  const asked = kinds.flatMap(({ name, files }) => files.map((known) => askBoth(name, known)));
  return rodTable([...asked.map(({ rod }) => rod), ...asked.map(({ none }) => none)]);
}

/** For the rod, and where none is. */
export function askBoth(name: string, { picture, truth }: Known<Truth>) {
  const gray = grayOfFile(picture);
  return { rod: ask(name, gray, truth), none: ask(NO_ROD, gray, across(truth)) };
}

function ask(name: string, gray: Gray, truth: Truth): RodAsked {
  const draw = drawFrom(31 * truth.number + 5);
  const off = ([x, y]: Point, sigmaPx: number): Point => [
    x + draw.normal(0, sigmaPx),
    y + draw.normal(0, sigmaPx),
  ];
  const tape = truth.tapeGraduations
    .filter(({ inches }) => Number.isInteger(inches))
    .map(({ inches, strokePx }) => ({
      placePx: off(strokePx[ON_STROKE] ?? strokePx[0] ?? [0, 0], TAPE_PX),
      sigmaPx: TAPE_PX,
      readingMm: 25.4 * inches,
    }));
  const [facePx, pinPx] = [off(truth.chamberFace, HAND_PX), off(truth.clevisPin, HAND_PX)];
  const began = process.cpuUsage();
  const found = findRod(gray, { facePx, faceSigmaPx: HAND_PX, pinPx, tape });
  const tookMs = process.cpuUsage(began).user / 1000;
  if (!found.ok) return { name, tookMs, reason: found.failure.code, found: null };
  const [from, to] = [truth.rodLine[0], truth.rodLine.at(-1)];
  const offered = { offsPx: [], zs: [], angleRad: Number.NaN, handRad: Number.NaN, wrong: true };
  if (!from || !to) return { name, tookMs, reason: null, found: offered };
  const trueRad = radOf(from, to);
  const square: Point = [-Math.sin(trueRad), Math.cos(trueRad)];
  const { marks } = found.value;
  const offsPx = marks.map(({ placePx }) => dot(minus(placePx, from), square));
  const zs = offsPx.map((offPx, i) => offPx / (marks[i]?.sigmaPx ?? 1));
  const [a, b] = marks.map(({ placePx }) => placePx);
  const angleRad = a && b ? Math.abs(radOf(a, b) - trueRad) : Number.NaN;
  const hand = a && b ? Math.abs(radOf(off(a, HAND_PX), off(b, HAND_PX)) - radOf(a, b)) : Number.NaN;
  const wrong = offsPx.some((offPx, i) => Math.abs(offPx) > WRONG_PX && Math.abs(zs[i] ?? 0) > 4);
  return { name, tookMs, reason: null, found: { offsPx, zs, angleRad, handRad: hand, wrong } };
}

const radOf = (from: Point, to: Point) => Math.atan2(to[1] - from[1], to[0] - from[0]);

/** As if face, pin and tape lay square to where they do: no rod is there. */
function across(truth: Truth): Truth {
  const [f, p] = [truth.chamberFace, truth.clevisPin];
  const [mx, my] = [(f[0] + p[0]) / 2, (f[1] + p[1]) / 2];
  const turned = ([x, y]: Point): Point => [mx - (y - my), my + (x - mx)];
  return {
    ...truth,
    chamberFace: turned(f),
    clevisPin: turned(p),
    rodLine: [],
    tapeGraduations: truth.tapeGraduations.map(({ inches, strokePx }) => ({
      inches,
      strokePx: strokePx.map(turned),
    })),
  };
}
