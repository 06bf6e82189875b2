/**
 * Graduations found near a hand's mark, on pictures with truth: how far off, how often found, refused or wrong, and whether the stated
 * uncertainty is honest. Pictures: assists-pictures.ts.
 */
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { findLattice } from '../../src/vision/assist-lattice.ts';
import type { FoundMark } from '../../src/vision/assist-sight.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { type TapeDrawn, tapeTable } from './assists-marks-tables.ts';
import { numbersFrom, picturesOf } from './assists-pictures.ts';
import { type Graduation, graduationSchema, INCH, markOff } from './assists-strokes-truth.ts';

/** Looks 0 to 15 and flat stills 0 and 1 were looked at while the assists were made; these were not. */
const LOOKS = { first: 100, count: 40 };
const FLAT = { first: 2, count: 26 };
const HANDS = 1;

const px = z.tuple([z.number(), z.number()]);
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  camshaftEnd: px,
  tapeGraduations: z.array(graduationSchema),
});
type Truth = z.infer<typeof truthSchema>;

export const marksStudy = { name: 'marks', run: study };

function study(): string {
  const pictures = picturesOf('assists-marks', 'assists_marks_flat.py', truthSchema);
  const kinds = [
    { name: 'ray-traced looks', files: pictures.looks(numbersFrom(LOOKS)) },
    { name: 'flat scenes', files: pictures.flats(FLAT) },
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

export const handAt = ([x, y]: Point, sigmaPx: number, draw: ReturnType<typeof drawFrom>): Point => [
  x + draw.normal(0, sigmaPx),
  y + draw.normal(0, sigmaPx),
];

export function tapesOf(
  gray: Gray,
  { tapeGraduations: all }: Pick<Truth, 'tapeGraduations'>,
  sigmaPx: number,
  seed: number,
): TapeDrawn[] {
  const draw = drawFrom(seed + 7);
  const at = (inches: number) => all.find((each) => each.inches === inches);
  const [low, high] = [at(2) ?? at(3), at(9) ?? at(8)];
  if (!low || !high) return [];
  const named = (mark: Graduation, inches = mark.inches) => ({
    placePx: handAt(mark.px, sigmaPx, draw),
    sigmaPx,
    readingMm: INCH * inches,
  });
  const ways = [
    { way: 'two named', found: findLattice(gray, [named(low), named(high)]) },
    { way: 'a reading wrong by 1 in', found: findLattice(gray, [named(low), named(high, high.inches + 1)]) },
  ];
  return ways.map(({ way, found }) => ({
    way,
    handPx: sigmaPx,
    marks: found.ok ? found.value.marks.flatMap((mark) => markOff(mark, all) ?? []) : null,
    scaleOff: found.ok ? scaleOff(found.value.marks, all) : null,
  }));
}

/** Length between the outermost marks over that of the same strokes in truth, at the marks' distance from the edge, less one. */
function scaleOff(marks: readonly FoundMark[], all: readonly Graduation[]): number | null {
  const [first, last] = [marks[0], marks.at(-1)];
  const [a, b] = [first, last].map((mark) => mark && markOff(mark, all));
  if (!first || !last || !a || !b || first === last) return null;
  const lengthPx = Math.hypot(last.placePx[0] - first.placePx[0], last.placePx[1] - first.placePx[1]);
  return (b.offPx - a.offPx) / lengthPx;
}
