/**
 * A tape of which nothing is named, on pictures with truth: how often its strokes are found, whether they are whole inches, halves and quarters
 * where they are taken for them, what naming one of them gives, and whether nothing is found where there is no tape. Pictures as in
 * assists-marks.ts, of numbers of their own, kept in node_modules/.cache/assists-tape. ONLY_KEPT=1 renders none.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import type { FoundMark } from '../../src/vision/assist-sight.ts';
import { findTape } from '../../src/vision/find-tape.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { nameStrokes } from '../../src/vision/name-strokes.ts';
import type { Point } from '../../src/vision/point.ts';
import { gravel } from './assists-guess-kept.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { type TapeAsked, tapeSeenTable } from './assists-tape-tables.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-tape', import.meta.url));
/** Flat stills 5000 to 5019 and looks 0 and 1 were looked at while this was made; these were not. */
const LOOKS = [...from(701, 22), ...from(200, 10)];
const FLAT = { first: 6000, count: 65 };
const HAND_PX = 2;
const FINGER_PX = 3;
const INCH = 25.4;
/** Of the flat scenes, one in so many is asked about across the rod too, where no tape lies. */
const ACROSS_EVERY = 8;

const px = z.tuple([z.number(), z.number()]);
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  tapeGraduations: z.array(z.object({ inches: z.number(), px, strokePx: z.array(px) })),
});
type Truth = z.infer<typeof truthSchema>;
type Graduation = Truth['tapeGraduations'][number];

export const tapeStudy = { name: 'tape', run: study };

function study(): string {
  mkdirSync(FOLDER, { recursive: true });
  const asked: TapeAsked[] = [];
  const rayTraced = looks();
  for (const [i, { picture, truth }] of flats().entries()) {
    const look = i % 2 === 0 ? rayTraced[i / 2] : undefined;
    if (look) asked.push(ask('ray-traced looks', grayOfFile(look.picture), look.truth));
    const gray = grayOfFile(picture);
    asked.push(ask('flat scenes', gray, truth));
    if (i % ACROSS_EVERY === 0) asked.push(ask('flat scenes, asked across the rod', gray, across(truth)));
    if (i % (3 * ACROSS_EVERY) === 0)
      asked.push(ask('gravel', stones(gray), { ...truth, tapeGraduations: [] }));
  }
  return tapeSeenTable(asked);
}

function from(first: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => first + i);
}

type Known = { readonly picture: string; readonly truth: Truth };
const known = (name: string, ending: string): readonly Known[] => {
  const [picture, file] = [`${FOLDER}/${name}.${ending}`, `${FOLDER}/${name}.json`];
  return existsSync(picture) && existsSync(file)
    ? [{ picture, truth: truthSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) }]
    : [];
};

function looks(): readonly Known[] {
  const script = fileURLToPath(new URL('./assists-marks-render.mjs', import.meta.url));
  return LOOKS.flatMap((number) => {
    if (known(`look-${number}`, 'jpg').length === 0 && !process.env.ONLY_KEPT)
      execFileSync('node', [script, String(number), FOLDER], { stdio: 'inherit' });
    return known(`look-${number}`, 'jpg');
  });
}

function flats(): readonly Known[] {
  const script = fileURLToPath(new URL('./assists_marks_flat.py', import.meta.url));
  const kept = () => from(FLAT.first, FLAT.count).flatMap((number) => known(`flat-${number}`, 'pgm'));
  if (kept().length === 0)
    execFileSync('/usr/bin/python3', [script, FOLDER, String(FLAT.first), String(FLAT.count)], {
      stdio: 'inherit',
    });
  return kept();
}

function stones({ widthPx, heightPx }: Gray): Gray {
  const draw = drawFrom(7);
  return gravel(widthPx, heightPx, () => draw.uniform(0, 1));
}

/** As if the rod ran square to where it does, about its middle. */
function across({ chamberFace: [fx, fy], clevisPin: [px, py], ...truth }: Truth): Truth {
  const [mx, my] = [(fx + px) / 2, (fy + py) / 2];
  const [dx, dy] = [(px - fx) / 2, (py - fy) / 2];
  return { ...truth, chamberFace: [mx + dy, my - dx], clevisPin: [mx - dy, my + dx], tapeGraduations: [] };
}

function ask(kind: string, gray: Gray, truth: Truth): TapeAsked {
  const draw = drawFrom(truth.number + 11);
  const off = ([x, y]: Point, sigmaPx: number): Point => [
    x + draw.normal(0, sigmaPx),
    y + draw.normal(0, sigmaPx),
  ];
  const [facePx, pinPx] = [off(truth.chamberFace, HAND_PX), off(truth.clevisPin, HAND_PX)];
  const begun = process.cpuUsage().user;
  const found = findTape(gray, { of: 'tape-strokes', facePx, pinPx });
  const seconds = (process.cpuUsage().user - begun) / 1e6;
  const all = truth.tapeGraduations;
  const asked = { kind, number: truth.number, hasTape: all.length > 0, seconds };
  if (!found.ok) return { ...asked, seen: null };
  const { marks } = found.value;
  const wholes = all.filter(({ inches }) => Number.isInteger(inches));
  const named = wholes[Math.floor(draw.uniform(0, wholes.length))];
  const name = (inches: number) =>
    named
      ? nameStrokes(
          marks,
          { placePx: off(named.px, FINGER_PX), sigmaPx: FINGER_PX, readingMm: INCH * inches },
          facePx,
        )
      : null;
  const right = named ? name(named.inches) : null;
  return {
    ...asked,
    seen: {
      inPlace: isInPlace(marks, all),
      count: marks.length,
      named: right ? right.flatMap((mark) => markOff(mark, all) ?? []) : null,
      misread: named ? name(named.inches + 1) !== null : false,
    },
  };
}

/** Whether one count by whole inches puts nearly all of the marks on the true strokes of their readings. */
function isInPlace(marks: readonly FoundMark[], all: readonly Graduation[]): boolean {
  const right = (by: number) => {
    const offs = marks.flatMap(
      (mark) => markOff({ ...mark, readingMm: (mark.readingMm ?? 0) + by * INCH }, all) ?? [],
    );
    return offs.filter(({ offPx }) => Math.abs(offPx) < 2).length / marks.length;
  };
  return Math.max(...Array.from({ length: 61 }, (_, i) => right(i - 40))) > 0.8;
}

/** Across the true stroke, where the mark lies on it; a reading whose stroke lies elsewhere counts in full. */
function markOff({ placePx, readingMm, sigmaPx }: FoundMark, all: readonly Graduation[]) {
  const truth = all.find(({ inches }) => Math.abs(inches * INCH - (readingMm ?? 0)) < 0.01);
  if (!truth) return null;
  const line = Array.from({ length: 20 }, (_, i) => strokeAt(truth.strokePx, i));
  const offs = line.slice(1).map((to, i) => {
    const from = line[i] as Point;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const share = ((placePx[0] - from[0]) * dx + (placePx[1] - from[1]) * dy) / (dx * dx + dy * dy);
    const part = Math.max(0, Math.min(1, share));
    const [x, y] = [from[0] + part * dx, from[1] + part * dy];
    const side = Math.sign(dx * (placePx[1] - y) - dy * (placePx[0] - x)) || 1;
    return side * Math.hypot(placePx[0] - x, placePx[1] - y);
  });
  return { offPx: offs.reduce((least, off) => (Math.abs(off) < Math.abs(least) ? off : least)), sigmaPx };
}

/** Known over six millimetres, carried on to the blade's other edge: it is a parabola, flat or hollow. */
function strokeAt(known: readonly Point[], acrossMm: number): Point {
  const [a, b, c] = [known[0], known[3], known[6]] as [Point, Point, Point];
  const u = acrossMm / 6;
  const by = [(1 - u) * (1 - 2 * u), 4 * u * (1 - u), u * (2 * u - 1)] as const;
  return [0, 1].map((k) => a[k as 0] * by[0] + b[k as 0] * by[1] + c[k as 0] * by[2]) as unknown as Point;
}
