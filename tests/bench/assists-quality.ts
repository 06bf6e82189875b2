/**
 * What a picture is said to be like, against what was done to it: ray-traced looks (assists-marks-render.mjs) spoiled by known amounts; and
 * what the limits are made of: U95 by pixels per inch and by angle in simulated wheel ends, graduations found by blur.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { degFromRad } from '../../src/basics/units.ts';
import { measure } from '../../src/measurement/measure.ts';
import {
  ENOUGH_PX_PER_IN,
  MOST_BLUR_PX,
  MOST_BURNT,
  MOST_DARK,
  MOST_GLARE,
  pictureFaults,
} from '../../src/measurement/picture-faults.ts';
import { findLattice } from '../../src/vision/assist-lattice.ts';
import { grayOf } from '../../src/vision/gray.ts';
import { type Picture, pictureQuality, type QualityQuestion } from '../../src/vision/picture-quality.ts';
import type { Point } from '../../src/vision/point.ts';
import { simulate } from '../simulation/scene.ts';
import { sceneOptions } from './accuracy-cells.ts';
import { type Known, looksKept } from './assists-looks.ts';
import { rgbaOfFile } from './assists-marks-picture.ts';
import { type Spoil, spoiled } from './assists-quality-spoil.ts';
import { at, confusion, type Judged, tapeTable, widthTable } from './assists-quality-tables.ts';

export const qualityStudy = { name: 'quality', run: study };

const SCENES = 24;
const ABOUT_PX = 90;
const INCH = 25.4;

function study(): string {
  return [byPixels(), byAngle(), byPicture()].join('\n\n');
}

function byPixels(): string {
  const rows = [300, 500, 900, 1400, 2400].map((distance) => {
    const cells = ([1, 0.25] as const).map((sigmaPx) => {
      const all = scenes({ reference: 'tape', way: 'careful', sigmaPx, cameraStill: false }, distance, 25);
      return {
        pxPerIn: at(
          all.map((each) => each.pxPerIn),
          0.5,
        ),
        U: at(
          all.map((each) => each.U),
          0.5,
        ),
      };
    });
    return `| ${cells[0]?.pxPerIn.toFixed(0)} | ${cells.map(({ U }) => U.toFixed(2)).join(' | ')} |`;
  });
  return `Pixels per inch along the rod (simulated, tape, careful, hand-held, ${SCENES} scenes a line; median U95 in mm; 1/32 in is 0.79, 1/16 in 1.59):\n\n| px per inch | marks of 1 px | found marks, 0.25 px |\n| --- | --- | --- |\n${rows.join('\n')}`;
}

function byAngle(): string {
  const drawn = (['plain', 'careful'] as const).map((way) =>
    scenes({ reference: 'tape', way, sigmaPx: 0.25, cameraStill: false }, 700, 35),
  );
  const rows = [0, 10, 20, 30, 40].map((from) => {
    const cells = drawn.map((all) => {
      const those = all.filter(({ offDeg }) => offDeg >= from && offDeg < from + 10);
      return those.length < 5
        ? '-'
        : `${at(
            those.map(({ U }) => U),
            0.5,
          ).toFixed(2)} (${those.length})`;
    });
    return `| ${from} to ${from + 10} | ${cells.join(' | ')} |`;
  });
  const apart = [0, 10, 20, 30].map((from) => {
    const those = (drawn[0] ?? []).filter(({ apartMm }) => apartMm >= from && apartMm < from + 10);
    return those.length < 5
      ? `| ${from} to ${from + 10} | - | - | ${those.length} |`
      : `| ${from} to ${from + 10} | ${at(
          those.map(({ U }) => U),
          0.5,
        ).toFixed(2)} | ${at(
          those.map(({ share }) => share),
          0.5,
        ).toFixed(2)} | ${those.length} |`;
  });
  return `Off square, by the adjusted geometry, found marks (median U95 in mm, scenes):\n\n| degrees | plain | careful |\n| --- | --- | --- |\n${rows.join('\n')}\n\nTape before or behind the pin's end, plain:\n\n| mm | U95, median | share of the variance, median | scenes |\n| --- | --- | --- | --- |\n${apart.join('\n')}`;
}

function scenes(cell: Parameters<typeof sceneOptions>[0], distance: number, offSquareDeg: number) {
  return Array.from({ length: SCENES }, (_, i) => i).flatMap((i) => {
    const { input } = simulate({
      ...sceneOptions(cell, 610_000 + i),
      distanceMm: [distance, 1.05 * distance],
      offSquareDeg,
    });
    const result = measure(input);
    if (!result.ok) return [];
    const { strokeMm, rods, sights } = result.value;
    return [
      {
        U: strokeMm.U95,
        pxPerIn: INCH * (rods[0]?.pxPerMm ?? 0),
        offDeg: degFromRad(Math.max(...sights.map((each) => each.offSquareRad))),
        apartMm: Math.max(...sights.map((each) => each.reference?.apartMm ?? 0)),
        share: Math.max(...sights.map((each) => each.reference?.share ?? 0)),
      },
    ];
  });
}

function byPicture(): string {
  const judged: Judged[] = [];
  const widths: { readonly want: number; readonly got: number }[] = [];
  const ways: number[] = [];
  const tapes = new Map<string, { asked: number; found: number }>();
  const times: number[] = [];
  for (const known of looksKept(100, 110)) {
    const { picture, question, tape, scale } = partOf(known);
    const draw = drawFrom(880_000 + known.truth.number);
    const own = known.truth.blurPx;
    for (const { name, spoil, blurPx } of spoils(draw, tape)) {
      const bad = name === 'as it is' ? picture : spoiled(picture, spoil, known.truth.number);
      const began = performance.now();
      const seen = pictureQuality(bad, question);
      times.push(performance.now() - began);
      const faults = pictureFaults({ ...seen, scale, sight: null }).map(({ code }) => code);
      const want = Math.hypot(own, blurPx ?? 0);
      if (seen.blur && !spoil.exposure && !spoil.glare) {
        widths.push({ want, got: seen.blur.mostPx });
        if (spoil.smear && seen.blur.alongRad !== null)
          ways.push(degFromRad(Math.asin(Math.abs(Math.sin(seen.blur.alongRad - spoil.smear.alongRad)))));
      }
      const isBlurred = faults.some((code) => code === 'picture/blurred' || code === 'picture/smeared');
      const tell = (fault: string, truth: boolean, said: boolean) => judged.push({ fault, truth, said });
      if (!spoil.exposure && !spoil.glare) tell('blurred or smeared', want > MOST_BLUR_PX, isBlurred);
      if ((spoil.smear || spoil.blurPx) && want > MOST_BLUR_PX)
        tell('smeared, not blurred', spoil.smear !== undefined, faults.includes('picture/smeared'));
      const { dark, burnt } = sharesOf(picture, spoil.exposure ?? 1);
      if (!spoil.glare) {
        tell('dark', dark > MOST_DARK, faults.includes('picture/dark'));
        tell('burnt out', burnt > MOST_BURNT, faults.includes('picture/burnt'));
      }
      if (tape && (spoil.glare || name === 'as it is'))
        tell(
          'glare on the tape',
          (spoil.glare ? (GLARES[name] ?? 0) : 0) > MOST_GLARE,
          faults.includes('picture/glare'),
        );
      if (name === 'as it is')
        tell('far', INCH * scale.pxPerMm < ENOUGH_PX_PER_IN, faults.includes('picture/far'));
      if (tape && !spoil.exposure && !spoil.glare) {
        const key = spoil.smear ? `smeared by ${spoil.smear.lengthPx} px` : `blurred by ${blurPx ?? 0} px`;
        const count = tapes.get(key) ?? { asked: 0, found: 0 };
        count.asked++;
        if (tapeFound(bad, tape)) count.found++;
        tapes.set(key, count);
      }
    }
  }
  return [
    confusion(judged),
    widthTable(widths, ways),
    tapeTable(tapes),
    `One picture's part in Node, median: ${at(times, 0.5).toFixed(0)} ms.`,
  ].join('\n\n');
}

type Tape = readonly [
  { readonly placePx: Point; readonly readingMm: number },
  { readonly placePx: Point; readonly readingMm: number },
];
const GLARES: Readonly<Record<string, number>> = { 'glare on 15 %': 0.15, 'glare on 50 %': 0.5 };

function spoils(
  draw: ReturnType<typeof drawFrom>,
  tape: Tape | null,
): readonly { readonly name: string; readonly spoil: Spoil; readonly blurPx?: number }[] {
  const alongRad = draw.uniform(0, Math.PI);
  const blurs = [1.5, 3, 5].map((blurPx) => ({ name: `blur ${blurPx}`, spoil: { blurPx }, blurPx }));
  const smears = [6, 14].map((lengthPx) => ({
    name: `smear ${lengthPx}`,
    spoil: { smear: { lengthPx, alongRad } },
    blurPx: lengthPx / Math.sqrt(12),
  }));
  const exposures = [0.04, 0.15, 4].map((exposure) => ({ name: `light ${exposure}`, spoil: { exposure } }));
  const glares = tape
    ? Object.entries(GLARES).map(([name, share]) => ({ name, spoil: { glare: glareOn(tape, share, draw) } }))
    : [];
  return [{ name: 'as it is', spoil: {} }, ...blurs, ...smears, ...exposures, ...glares];
}

function glareOn(
  [low, high]: Tape,
  share: number,
  draw: ReturnType<typeof drawFrom>,
): NonNullable<Spoil['glare']> {
  const begin = draw.uniform(0, 1 - share);
  const along = (part: number): Point => [
    low.placePx[0] + part * (high.placePx[0] - low.placePx[0]),
    low.placePx[1] + part * (high.placePx[1] - low.placePx[1]),
  ];
  const pxPerMm =
    Math.hypot(high.placePx[0] - low.placePx[0], high.placePx[1] - low.placePx[1]) /
    (high.readingMm - low.readingMm);
  return { from: along(begin), to: along(begin + share), halfWidthPx: 9 * pxPerMm };
}

/** The part about the brake, and what is marked on it. */
function partOf({ picture: file, truth }: Known) {
  const whole = rgbaOfFile(file);
  const places = [
    truth.chamberFace,
    truth.clevisPin,
    truth.camshaftEnd,
    ...truth.tapeGraduations.map(({ px }) => px),
  ];
  const [left, top] = [0, 1].map((k) =>
    Math.max(0, Math.floor(Math.min(...places.map((p) => p[k] as number)) - ABOUT_PX)),
  ) as [number, number];
  const [right, low] = [0, 1].map((k) =>
    Math.min(
      k === 0 ? whole.widthPx : whole.heightPx,
      Math.ceil(Math.max(...places.map((p) => p[k] as number)) + ABOUT_PX),
    ),
  ) as [number, number];
  const picture = cut(whole, left, top, right - left, low - top);
  const moved = ([x, y]: Point): Point => [x - left, y - top];
  const inOrder = [...truth.tapeGraduations].sort((a, b) => a.inches - b.inches);
  const asPlace = ({ inches, px }: (typeof inOrder)[number]) => ({
    placePx: moved(px),
    readingMm: INCH * inches,
  });
  const [first, last] = [
    inOrder.find(({ inches }) => inches === 2),
    inOrder.findLast(({ inches }) => inches % 1 === 0),
  ];
  const tape: Tape | null = first && last && last.inches > 6 ? [asPlace(first), asPlace(last)] : null;
  const [face, pin] = [moved(truth.chamberFace), moved(truth.clevisPin)];
  const margin = 0.4 * Math.hypot(pin[0] - face[0], pin[1] - face[1]);
  const question: QualityQuestion = {
    aboutPx: {
      xPx: Math.min(face[0], pin[0]) - margin,
      yPx: Math.min(face[1], pin[1]) - margin,
      widthPx: Math.abs(face[0] - pin[0]) + 2 * margin,
      heightPx: Math.abs(face[1] - pin[1]) + 2 * margin,
    },
    tape: tape ?? [],
  };
  // A rod of 5/8 in, whose half width is known in the picture.
  return { picture, question, tape, scale: { pxPerMm: truth.rodHalfPx / (15.875 / 2), known: true } };
}

function cut({ rgba, widthPx }: Picture, left: number, top: number, width: number, height: number): Picture {
  const part = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y++)
    part.set(
      rgba.subarray(4 * ((top + y) * widthPx + left), 4 * ((top + y) * widthPx + left + width)),
      4 * y * width,
    );
  return { widthPx: width, heightPx: height, rgba: part };
}

/** By the exposure alone, from the picture before: without noise and without the code under test. */
function sharesOf({ rgba }: Picture, exposure: number) {
  const lin = (v: number) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
  const enc = (v: number) => 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
  const table = Float64Array.from({ length: 256 }, (_, v) => enc(Math.min(1, exposure * lin(v))));
  let [dark, burnt, count] = [0, 0, 0];
  for (let at = 0; at < rgba.length; at += 4) {
    const [r, g, b] = [0, 1, 2].map((c) => table[rgba[at + c] as number] as number) as [
      number,
      number,
      number,
    ];
    count++;
    if (Math.max(r, g, b) > 251.5) burnt++;
    else if (0.299 * r + 0.587 * g + 0.114 * b < 30) dark++;
  }
  return { dark: dark / count, burnt: burnt / count };
}

function tapeFound(picture: Picture, [low, high]: Tape): boolean {
  const named = (each: Tape[number]) => ({ ...each, sigmaPx: 2 });
  return findLattice(grayOf(picture.rgba, picture.widthPx, picture.heightPx), [named(low), named(high)]).ok;
}
