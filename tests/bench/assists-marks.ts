/**
 * Graduations found near a hand's mark, on pictures with truth: how far off, how often found, refused or wrong, and whether the stated
 * uncertainty is honest. Ray-traced looks are made once (assists-marks-render.mjs; Debian packages povray, imagemagick,
 * fonts-dejavu-core), flat ones by assists_marks_flat.py (python3-opencv); both are kept in node_modules/.cache/assists-marks.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { findLattice } from '../../src/vision/assist-lattice.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { findLatticeAgain } from '../../src/vision/lattice-again.ts';
import type { Point } from '../../src/vision/point.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { type TapeDrawn, tapeTable } from './assists-marks-tables.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-marks', import.meta.url));
/** Looks 0 to 15 and flat stills 0 and 1 were looked at while the assists were made; these were not. */
const LOOKS = { first: 100, count: 40 };
const FLAT = { first: 2, count: 26 };
const HANDS = 1;
const INCH = 25.4;

const px = z.tuple([z.number(), z.number()]);
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  camshaftEnd: px,
  tapeGraduations: z.array(z.object({ inches: z.number(), px, strokePx: z.array(px) })),
});
type Truth = z.infer<typeof truthSchema>;
type Graduation = Truth['tapeGraduations'][number];

export const marksStudy = { name: 'marks', run: study };

function study(): string {
  mkdirSync(FOLDER, { recursive: true });
  const kinds = [
    { name: 'ray-traced looks', files: looks() },
    { name: 'flat scenes', files: flats() },
  ];
  return kinds
    .map(({ name, files }) => {
      const tapes: TapeDrawn[] = [];
      for (const { picture, truth } of files) {
        const gray = grayOfFile(picture);
        for (const sigmaPx of [1, 3])
          for (let hand = 0; hand < HANDS; hand++) {
            const seed = 100 * truth.number + 10 * sigmaPx + hand;
            tapes.push(...tapesOf(gray, truth, sigmaPx, seed));
          }
      }
      return `**${name}**, ${files.length} pictures, ${HANDS} hands of each sigma\n\n${tapeTable(tapes)}`;
    })
    .join('\n\n');
}

type Known = { readonly picture: string; readonly truth: Truth };
const known = (name: string, ending: string): Known[] => {
  const [picture, file] = [`${FOLDER}/${name}.${ending}`, `${FOLDER}/${name}.json`];
  return existsSync(picture) && existsSync(file)
    ? [{ picture, truth: truthSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) }]
    : [];
};
const numbers = ({ first, count }: typeof LOOKS) => Array.from({ length: count }, (_, i) => first + i);

function looks(): readonly Known[] {
  const script = fileURLToPath(new URL('./assists-marks-render.mjs', import.meta.url));
  return numbers(LOOKS).flatMap((number) => {
    if (known(`look-${number}`, 'jpg').length === 0 && !process.env.ONLY_KEPT)
      execFileSync('node', [script, String(number), FOLDER], { stdio: 'inherit' });
    return known(`look-${number}`, 'jpg');
  });
}

function flats(): readonly Known[] {
  const script = fileURLToPath(new URL('./assists_marks_flat.py', import.meta.url));
  if (numbers(FLAT).every((number) => known(`flat-${number}`, 'pgm').length === 0))
    execFileSync('/usr/bin/python3', [script, FOLDER, String(FLAT.first), String(FLAT.count)], {
      stdio: 'inherit',
    });
  return numbers(FLAT).flatMap((number) => known(`flat-${number}`, 'pgm'));
}

const handAt = ([x, y]: Point, sigmaPx: number, draw: ReturnType<typeof drawFrom>): Point => [
  x + draw.normal(0, sigmaPx),
  y + draw.normal(0, sigmaPx),
];

function tapesOf(gray: Gray, { tapeGraduations: all }: Truth, sigmaPx: number, seed: number): TapeDrawn[] {
  const draw = drawFrom(seed + 7);
  const at = (inches: number) => all.find((each) => each.inches === inches);
  const [low, high] = [at(2) ?? at(3), at(9) ?? at(8)];
  if (!low || !high) return [];
  const named = (mark: Graduation, inches = mark.inches) => ({
    placePx: handAt(mark.px, sigmaPx, draw),
    sigmaPx,
    readingMm: INCH * inches,
  });
  const turn = draw.normal(0, 3.5) * (Math.PI / 180);
  const by = draw.uniform(0.85, 1.2);
  const [dx, dy] = [high.px[0] - low.px[0], high.px[1] - low.px[1]];
  const aboutPx: Point = [
    low.px[0] + by * (Math.cos(turn) * dx - Math.sin(turn) * dy),
    low.px[1] + by * (Math.sin(turn) * dx + Math.cos(turn) * dy),
  ];
  const ways = [
    { way: 'two named', found: findLattice(gray, [named(low), named(high)]) },
    {
      way: 'one named, another picture known',
      found: findLatticeAgain(gray, {
        of: 'tape-again',
        named: named(low),
        other: { aboutPx, readingMm: INCH * high.inches },
      }),
    },
    { way: 'a reading wrong by 1 in', found: findLattice(gray, [named(low), named(high, high.inches + 1)]) },
  ];
  return ways.map(({ way, found }) => ({
    way,
    handPx: sigmaPx,
    marks: found.ok ? found.value.marks.flatMap((mark) => markOff(mark, all) ?? []) : null,
    scaleOff: found.ok ? scaleOff(found.value.marks, all) : null,
  }));
}

type Found = { readonly placePx: Point; readonly readingMm: number | null; readonly sigmaPx: number };

/** Across the true stroke, where the mark lies on it; a reading whose stroke lies elsewhere counts in full. */
function markOff({ placePx, readingMm, sigmaPx }: Found, all: readonly Graduation[]) {
  const truth = all.find(({ inches }) => Math.abs(inches * INCH - (readingMm ?? 0)) < 0.01);
  if (!truth) return null;
  const offs = truth.strokePx.slice(1).map((to, i) => {
    const from = truth.strokePx[i] as Point;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const share = ((placePx[0] - from[0]) * dx + (placePx[1] - from[1]) * dy) / (dx * dx + dy * dy);
    const part = Math.max(0, Math.min(1, share));
    const [x, y] = [from[0] + part * dx, from[1] + part * dy];
    const side = Math.sign(dx * (placePx[1] - y) - dy * (placePx[0] - x)) || 1;
    return side * Math.hypot(placePx[0] - x, placePx[1] - y);
  });
  return { offPx: offs.reduce((least, off) => (Math.abs(off) < Math.abs(least) ? off : least)), sigmaPx };
}

/** Length between the outermost marks over that of the same strokes in truth, at the marks' distance from the edge, less one. */
function scaleOff(marks: readonly Found[], all: readonly Graduation[]): number | null {
  const [first, last] = [marks[0], marks.at(-1)];
  const [a, b] = [first, last].map((mark) => mark && markOff(mark, all));
  if (!first || !last || !a || !b || first === last) return null;
  const lengthPx = Math.hypot(last.placePx[0] - first.placePx[0], last.placePx[1] - first.placePx[1]);
  return (b.offPx - a.offPx) / lengthPx;
}
