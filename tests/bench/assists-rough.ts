/**
 * What is seen of a picture before anything is marked in it: how often, where, and whether what is told as likely is right; and whether nothing is
 * seen where there is no brake. Where the axis is not seen, the ends are sought with one that is given. Pictures: assists-pictures.ts, of numbers of their own; strips of them beside tape and chamber; gravel; the sample
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
import { endsGiven } from './assists-rough-given.ts';
import { type RoughAsked, roughTable } from './assists-rough-tables.ts';

/**
 * Looks 1, 200 to 214, 701 to 731 and 1201 and flat scenes 204 to 208, 5000 to 5019, 20000 to 20201 and 22009 to 22299 were looked at while this was
 * made. These were not; the first looks had been judged before by the study of bands. Of the last those with a tape.
 */
const LOOKS = [
  ...numbersFrom({ first: 901, count: 13 }),
  ...numbersFrom({ first: 1501, count: 16 }),
  ...numbersFrom({ first: 1601, count: 14 }).filter((number) => number % 4 !== 3),
];
const FLAT = { first: 31000, count: 150 };
/** Of the pictures, strips are cut from one in so many, and one in so many is answered by gravel. */
const STRIP_EVERY = 12;
const GRAVEL_EVERY = 30;
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
  camshaftEnd: px,
  /** Of a flat scene: null without rod and arm. */
  ends: z.record(z.string(), z.unknown()).nullable().optional(),
  rim: z.array(px),
  tapeGraduations: z.array(z.object({ inches: z.number(), px, strokePx: z.array(px) })),
});
type Truth = z.infer<typeof truthSchema>;

export const roughStudy = { name: 'rough', run: study };

function study(): string {
  return roughTable([...questions()].map(ask));
}

export type Question = { readonly kind: string; readonly gray: () => Gray; readonly truth: Truth | null };

export function* questions(): Generator<Question> {
  const pictures = picturesOf('assists-rough', 'assists_rough_flat.py', truthSchema);
  const sets = [
    { set: 'ray-traced looks', known: pictures.looks(LOOKS) },
    { set: 'flat scenes', known: pictures.flats(FLAT) },
  ];
  const draw = drawFrom(7);
  for (const { set, known } of sets)
    for (const [i, { picture, truth }] of known.entries()) {
      const gray = () => grayOfFile(picture);
      const hasTape = truth.tapeGraduations.length > 0;
      const kind = hasTape ? (truth.ends === null ? `${set}, no rod and arm` : set) : `${set}, no tape`;
      yield { kind, gray, truth };
      if (i % STRIP_EVERY === 0 && hasTape)
        for (const strip of stripsOf(gray(), truth))
          yield { kind: `${set}, strips without a brake`, gray: () => strip, truth: null };
      if (i % GRAVEL_EVERY === 0) {
        const { widthPx, heightPx } = gray();
        const stones = gravel(widthPx, heightPx, () => draw.uniform(0, 1));
        yield { kind: 'gravel', gray: () => stones, truth: null };
      }
    }
  for (const { gray, truth, hasTape } of samples())
    yield { kind: hasTape ? 'sample media' : 'sample media, no tape', gray: () => gray, truth };
}

export function ask({ kind, gray: read, truth }: Question): RoughAsked {
  const gray = read();
  const begun = process.cpuUsage().user;
  const guess = roughGuess(gray);
  const seconds = (process.cpuUsage().user - begun) / 1e6;
  const given = truth && !guess.axis ? endsGiven(gray, truth) : null;
  const ends = given ?? guess;
  return {
    kind,
    seconds,
    tape: guess.tape && {
      likely: guess.tape.likely,
      right: truth !== null && isOnInches(guess.tape.placesPx, truth),
    },
    bandOffPx: guess.band && (truth ? rimOff(guess.band.placesPx, truth) : Number.POSITIVE_INFINITY),
    axis: guess.axis && (truth ? axisOff(guess.axis, truth) : null),
    isGiven: given !== null,
    pin: endOff(ends.pin, truth, 'clevisPin'),
    camshaft: endOff(ends.camshaft, truth, 'camshaftEnd'),
  };
}

/** Right: the true middle lies within the ring that is drawn. */
function endOff(
  end: RoughGuess['pin'],
  truth: Truth | null,
  of: 'clevisPin' | 'camshaftEnd',
): RoughAsked['pin'] {
  if (!end) return null;
  const off =
    truth && truth.ends !== null ? apart(end.placePx, truth[of]) / end.radiusPx : Number.POSITIVE_INFINITY;
  return { likely: end.likely, off };
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
        camshaftEnd: z.object({ px }),
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
    return views.map(
      ({ file, points: { chamberFace, clevisPin, camshaftEnd, clampBand, tapeGraduations = [] } }) => {
        // Strokes: square to the tape.
        const [a, b] = [tapeGraduations[0]?.px ?? [0, 0], tapeGraduations.at(-1)?.px ?? [1, 0]];
        const across = ([x, y]: Point): Point => [x - (b[1] - a[1]), y + (b[0] - a[0])];
        const truth: Truth = {
          number: 0,
          chamberFace: chamberFace.px,
          clevisPin: clevisPin.px,
          camshaftEnd: camshaftEnd.px,
          rim: clampBand.map((point) => point.px),
          tapeGraduations: tapeGraduations.map((each) => ({ ...each, strokePx: [across(each.px)] })),
        };
        return { gray: grayOfFile(`${folder(name)}/${file}`), truth, hasTape: tapeGraduations.length > 0 };
      },
    );
  });
}
