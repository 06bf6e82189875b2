/**
 * What is seen of a picture before anything is marked in it: how often, where, and whether what is told as likely is right; and whether nothing is
 * seen where there is no brake. Pictures: assists-pictures.ts, of numbers of their own; strips of them beside tape and chamber; gravel; the sample
 * media.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { fitEllipse } from '../../src/vision/fit-ellipse.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { apart, dot, minus, type Point } from '../../src/vision/point.ts';
import { roughGuess } from '../../src/vision/rough-guess.ts';
import type { RoughGuess } from '../../src/vision/rough-sight.ts';
import { outsideOf } from '../vision/ellipse-side.ts';
import { gravel } from './assists-guess-kept.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { numbersFrom, picturesOf } from './assists-pictures.ts';
import { type RoughAsked, roughTable } from './assists-rough-tables.ts';

/**
 * Looks 701 to 725 and 1201 and flat scenes 204 to 208 and 5000 to 5019 were looked at while this was made. These were not; they had
 * been judged before by the study of bands.
 */
const LOOKS = { first: 901, count: 13 };
const FLAT = { first: 400, count: 19 };
/** Of the pictures, strips are cut from one in so many, and one in so many is answered by gravel. */
const STRIP_EVERY = 4;
const GRAVEL_EVERY = 13;
const LEAST_STRIP_PX = 300;
/** Of an inch, across a stroke: farther off, a place is on another one. */
const ON_STROKE = 0.1;
/** Places that must be on whole inches. */
const LEAST_SHARE = 0.8;

const px = z.tuple([z.number(), z.number()]).readonly();
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  rim: z.array(px),
  tapeGraduations: z.array(z.object({ inches: z.number(), px, strokePx: z.array(px) })),
});
type Truth = Omit<z.infer<typeof truthSchema>, 'number'>;

export const roughStudy = { name: 'rough', run: study };

function study(): string {
  const pictures = picturesOf('assists-rough', 'assists_outlines_flat.py', truthSchema);
  const sets = [
    { kind: 'ray-traced looks', known: pictures.looks(numbersFrom(LOOKS)) },
    { kind: 'flat scenes', known: pictures.flats(FLAT) },
  ];
  const draw = drawFrom(7);
  const asked: RoughAsked[] = [];
  for (const { kind, known } of sets)
    for (const [i, { picture, truth }] of known.entries()) {
      const gray = grayOfFile(picture);
      const hasTape = truth.tapeGraduations.length > 0;
      asked.push(ask(hasTape ? kind : `${kind}, no tape`, gray, truth));
      if (i % STRIP_EVERY === 0 && hasTape)
        asked.push(
          ...stripsOf(gray, truth).map((strip) => ask(`${kind}, strips without a brake`, strip, null)),
        );
      if (i % GRAVEL_EVERY === 0)
        asked.push(
          ask(
            'gravel',
            gravel(gray.widthPx, gray.heightPx, () => draw.uniform(0, 1)),
            null,
          ),
        );
    }
  for (const { gray, truth, hasTape } of samples())
    asked.push(ask(hasTape ? 'sample media' : 'sample media, no tape', gray, truth));
  return roughTable(asked);
}

function ask(kind: string, gray: Gray, truth: Truth | null): RoughAsked {
  const begun = process.cpuUsage().user;
  const guess = roughGuess(gray);
  const seconds = (process.cpuUsage().user - begun) / 1e6;
  return {
    kind,
    seconds,
    tape: guess.tape && {
      likely: guess.tape.likely,
      right: truth !== null && isOnInches(guess.tape.placesPx, truth),
    },
    bandOffPx: guess.band && (truth ? rimOff(guess.band.placesPx, truth) : Number.POSITIVE_INFINITY),
    axis: guess.axis && (truth ? axisOff(guess.axis, truth) : null),
  };
}

/** Of the places that lie where the tape's graduations are known. */
function isOnInches(places: readonly Point[], { tapeGraduations }: Truth): boolean {
  const wholes = tapeGraduations.filter(({ inches }) => Number.isInteger(inches));
  const [low, high] = [wholes[0], wholes.at(-1)];
  if (!low || !high) return false;
  const inchPx = apart(low.px, high.px) / (high.inches - low.inches);
  const along = minus(high.px, low.px).map((d) => d / apart(low.px, high.px)) as unknown as Point;
  const reach = (place: Point) => dot(minus(place, low.px), along) / inchPx;
  const known = places.filter(
    (place) => reach(place) > -0.5 && reach(place) < high.inches - low.inches + 0.5,
  );
  const isOn = (place: Point) =>
    wholes.some(({ px: foot, strokePx }) => {
      const [sx, sy] = minus(strokePx.at(-1) ?? foot, foot);
      const [dx, dy] = minus(place, foot);
      return Math.abs(dx * sy - dy * sx) / Math.hypot(sx, sy) < ON_STROKE * inchPx;
    });
  return known.length >= 3 && known.filter(isOn).length >= LEAST_SHARE * known.length;
}

/** Rms. A circle seen is an ellipse: through its projected points it is exact. */
function rimOff(places: readonly Point[], { rim }: Truth): number {
  const ellipse = fitEllipse(rim);
  if (!ellipse) throw new Error('the rim is no ellipse');
  return Math.sqrt(places.reduce((sum, place) => sum + outsideOf(ellipse, place) ** 2, 0) / places.length);
}

/** How it is turned against the line from face to pin, and how far the pin lies from it, over the length of that line. */
function axisOff(
  { placesPx: [from, to] }: NonNullable<RoughGuess['axis']>,
  { chamberFace, clevisPin }: Truth,
) {
  if (!from || !to) return null;
  const [[ux, uy], [rx, ry]] = [minus(to, from), minus(clevisPin, chamberFace)];
  const [axis, rod] = [Math.hypot(ux, uy), Math.hypot(rx, ry)];
  const [px, py] = minus(clevisPin, from);
  return {
    turnDeg: (Math.abs(Math.atan2(ux * ry - uy * rx, ux * rx + uy * ry)) * 180) / Math.PI,
    pinOff: Math.abs(px * uy - py * ux) / axis / rod,
  };
}

/** What of a picture lies above, below, left and right of tape, chamber and pin. */
function stripsOf(gray: Gray, { rim, chamberFace, clevisPin, tapeGraduations }: Truth): readonly Gray[] {
  const all = [
    ...rim,
    chamberFace,
    clevisPin,
    ...tapeGraduations.flatMap(({ px: foot, strokePx }) => [foot, ...strokePx]),
  ];
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, right] = [Math.floor(Math.min(...xs)) - 30, Math.ceil(Math.max(...xs)) + 60];
  const [top, low] = [Math.floor(Math.min(...ys)) - 30, Math.ceil(Math.max(...ys)) + 30];
  const { widthPx, heightPx } = gray;
  return [
    cut(gray, 0, 0, widthPx, top),
    cut(gray, 0, low, widthPx, heightPx),
    cut(gray, 0, 0, left, heightPx),
    cut(gray, right, 0, widthPx, heightPx),
  ].filter((strip) => Math.min(strip.widthPx, strip.heightPx) >= LEAST_STRIP_PX);
}

function cut({ values, widthPx }: Gray, left: number, top: number, right: number, low: number): Gray {
  const [columns, rows] = [Math.max(0, right - left), Math.max(0, low - top)];
  const kept = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const from = (top + row) * widthPx + left;
    kept.set(values.subarray(from, from + columns), row * columns);
  }
  return { widthPx: columns, heightPx: rows, values: kept };
}

const sampleSchema = z.object({
  views: z.array(
    z.object({
      file: z.string(),
      points: z.object({
        chamberFace: z.object({ px }),
        clevisPin: z.object({ px }),
        clampBand: z.array(z.object({ px })),
        tapeGraduations: z.array(z.object({ inches: z.number(), px })).optional(),
      }),
    }),
  ),
});

function samples() {
  const folder = (name: string) => fileURLToPath(new URL(`../../sample-media/${name}`, import.meta.url));
  return ['pair-tape', 'pair-band'].flatMap((name) => {
    const { views } = sampleSchema.parse(JSON.parse(readFileSync(`${folder(name)}/truth.json`, 'utf8')));
    return views.map(({ file, points: { chamberFace, clevisPin, clampBand, tapeGraduations = [] } }) => {
      // Strokes: square to the tape.
      const [a, b] = [tapeGraduations[0]?.px ?? [0, 0], tapeGraduations.at(-1)?.px ?? [1, 0]];
      const across = ([x, y]: Point): Point => [x - (b[1] - a[1]), y + (b[0] - a[0])];
      const truth: Truth = {
        chamberFace: chamberFace.px,
        clevisPin: clevisPin.px,
        rim: clampBand.map((point) => point.px),
        tapeGraduations: tapeGraduations.map((each) => ({ ...each, strokePx: [across(each.px)] })),
      };
      return { gray: grayOfFile(`${folder(name)}/${file}`), truth, hasTape: tapeGraduations.length > 0 };
    });
  });
}
