/**
 * A tape of which nothing is named, on pictures with truth: how often its strokes are found, whether they are whole inches, halves and quarters
 * where they are taken for them, what naming one of them gives, and whether nothing is found where there is no tape. Pictures as in
 * assists-marks.ts, of numbers of their own (assists-pictures.ts).
 */
import { z } from 'zod';
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { FoundMark } from '../../src/vision/assist-sight.ts';
import { findTape } from '../../src/vision/find-tape.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { nameStrokes, tapeLie } from '../../src/vision/name-strokes.ts';
import type { Point } from '../../src/vision/point.ts';
import { gravel } from './assists-guess-kept.ts';
import { handAt } from './assists-marks.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { numbersFrom, picturesOf } from './assists-pictures.ts';
import { type Graduation, graduationSchema, INCH, markOff } from './assists-strokes-truth.ts';
import { type TapeAsked, tapeSeenTable } from './assists-tape-tables.ts';

/** Flat stills 5000 to 5019 and looks 0 and 1 were looked at while this was made; these were not. */
const LOOKS = [...numbersFrom({ first: 701, count: 22 }), ...numbersFrom({ first: 200, count: 10 })];
const FLAT = { first: 6000, count: 65 };
const HAND_PX = 2;
const FINGER_PX = 3;
/** Of the flat scenes, one in so many is asked about across the rod too, where no tape lies. */
const ACROSS_EVERY = 8;

const px = z.tuple([z.number(), z.number()]);
export const tapeTruthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  tapeGraduations: z.array(graduationSchema),
});
export type TapeTruth = z.infer<typeof tapeTruthSchema>;

export const tapeStudy = { name: 'tape', run: study };

function study(): string {
  const pictures = picturesOf('assists-tape', 'assists_marks_flat.py', tapeTruthSchema);
  const asked: TapeAsked[] = [];
  const rayTraced = pictures.looks(LOOKS);
  for (const [i, { picture, truth }] of pictures.flats(FLAT).entries()) {
    const look = i % 2 === 0 ? rayTraced[i / 2] : undefined;
    if (look) asked.push(askTape('ray-traced looks', grayOfFile(look.picture), look.truth));
    const gray = grayOfFile(picture);
    asked.push(askTape('flat scenes', gray, truth));
    if (i % ACROSS_EVERY === 0) asked.push(askTape('flat scenes, asked across the rod', gray, across(truth)));
    if (i % (3 * ACROSS_EVERY) === 0)
      asked.push(askTape('gravel', stones(gray), { ...truth, tapeGraduations: [] }));
  }
  return tapeSeenTable(asked);
}

function stones({ widthPx, heightPx }: Gray): Gray {
  const draw = drawFrom(7);
  return gravel(widthPx, heightPx, () => draw.uniform(0, 1));
}

/** As if the rod ran square to where it does, about its middle. */
function across({ chamberFace: [fx, fy], clevisPin: [px, py], ...truth }: TapeTruth): TapeTruth {
  const [mx, my] = [(fx + px) / 2, (fy + py) / 2];
  const [dx, dy] = [(px - fx) / 2, (py - fy) / 2];
  return { ...truth, chamberFace: [mx + dy, my - dx], clevisPin: [mx - dy, my + dx], tapeGraduations: [] };
}

export function askTape(kind: string, gray: Gray, truth: TapeTruth): TapeAsked {
  const draw = drawFrom(truth.number + 11);
  const ends = endsAt(truth, draw);
  const begun = process.cpuUsage().user;
  const found = findTape(gray, { of: 'tape-strokes', ...ends });
  const seconds = (process.cpuUsage().user - begun) / 1e6;
  const all = truth.tapeGraduations;
  const asked = { kind, number: truth.number, hasTape: all.length > 0, seconds };
  if (!found.ok) return { ...asked, seen: null };
  const { marks, isRead } = found.value;
  const wholes = all.filter(({ inches }) => Number.isInteger(inches));
  const named = wholes[Math.floor(draw.uniform(0, wholes.length))];
  const name = (inches: number) =>
    named
      ? nameStrokes(
          marks,
          { placePx: handAt(named.px, FINGER_PX, draw), sigmaPx: FINGER_PX, readingMm: INCH * inches },
          ends,
        )
      : null;
  const right = named ? name(named.inches) : null;
  const asRead = isRead ? offsOf(marks, all, 0) : null;
  return {
    ...asked,
    seen: {
      inPlace: isInPlace(marks, all),
      count: marks.length,
      named: right ? right.flatMap((mark) => markOff(mark, all, wholeStroke) ?? []) : null,
      read: asRead && (isMostlyOn(asRead, marks.length) ? 'right' : 'wrong'),
      // Where the numerals are read, both are said, and the person decides.
      misread: named && !isRead ? name(named.inches + 1) !== null : false,
      marks,
    },
  };
}

const endsAt = ({ chamberFace, clevisPin }: TapeTruth, draw: Draw) => ({
  facePx: handAt(chamberFace, HAND_PX, draw),
  pinPx: handAt(clevisPin, HAND_PX, draw),
});

/** Where of the other picture's tape two are marked. */
const TWO_INCHES = [2, 9];
/** So much may a tape have slipped that is held anew. */
const MOST_SLIP_INCHES = 0.4;

/**
 * The strokes found, as if the tape did not begin at the face: readings are some inches larger, or count the other way. One of them is named here, so
 * much wrong; of the tape in the other picture two are marked by hand, or all.
 */
export function askElsewhere(
  found: readonly FoundMark[],
  truth: TapeTruth,
  other: TapeTruth,
  misreadInches = 0,
) {
  const draw = drawFrom(truth.number + 13);
  const sign = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const byInches = (sign === 1 ? 1 : 12) + Math.floor(draw.uniform(0, 12));
  const slip = draw.uniform(-MOST_SLIP_INCHES, MOST_SLIP_INCHES);
  const isTwo = draw.uniform(0, 1) < 0.5;
  const known = other.tapeGraduations.filter(({ inches }) => !isTwo || TWO_INCHES.includes(inches));
  const lie = tapeLie(
    known.map(({ inches, px }) => ({
      placePx: handAt(px, FINGER_PX, draw),
      sigmaPx: FINGER_PX,
      readingMm: INCH * (sign * inches + byInches + slip),
    })),
    endsAt(other, draw),
  );
  const all = truth.tapeGraduations.map((each) => ({ ...each, inches: sign * each.inches + byInches }));
  const named = all[Math.floor(draw.uniform(0, all.length))];
  const marks =
    named &&
    nameStrokes(
      found,
      {
        placePx: handAt(named.px, FINGER_PX, draw),
        sigmaPx: FINGER_PX,
        readingMm: INCH * (named.inches + misreadInches),
      },
      endsAt(truth, draw),
      lie ? [lie] : [],
    );
  return marks ? marks.flatMap((mark) => markOff(mark, all, wholeStroke) ?? []) : null;
}

/** Whether one count by whole inches puts nearly all of the marks on the true strokes of their readings. */
function isInPlace(marks: readonly FoundMark[], all: readonly Graduation[]): boolean {
  return Array.from({ length: 61 }, (_, i) => offsOf(marks, all, i - 40)).some((offs) =>
    isMostlyOn(offs, marks.length),
  );
}

const offsOf = (marks: readonly FoundMark[], all: readonly Graduation[], byInches: number) =>
  marks.flatMap(
    (mark) =>
      markOff({ ...mark, readingMm: (mark.readingMm ?? 0) + byInches * INCH }, all, wholeStroke) ?? [],
  );

const isMostlyOn = (offs: ReturnType<typeof offsOf>, of: number) =>
  offs.filter(({ offPx }) => Math.abs(offPx) < 2).length > 0.8 * of;

/** Known over six millimetres, carried on to the blade's other edge: it is a parabola, flat or hollow. */
const wholeStroke = ({ strokePx }: Graduation): readonly Point[] =>
  Array.from({ length: 20 }, (_, i) => strokeAt(strokePx, i));

function strokeAt(known: readonly Point[], acrossMm: number): Point {
  const [a, b, c] = [known[0], known[3], known[6]] as [Point, Point, Point];
  const u = acrossMm / 6;
  const by = [(1 - u) * (1 - 2 * u), 4 * u * (1 - u), u * (2 * u - 1)] as const;
  return [0, 1].map((k) => a[k as 0] * by[0] + b[k as 0] * by[1] + c[k as 0] * by[2]) as unknown as Point;
}
