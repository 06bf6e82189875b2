/**
 * What is written into the chart: each application's stroke as a dimension, the limit's side, 90 % and square as ticks, gaps.
 *
 * Model    the dimension stands in the middle of the held part, from the released level up to it; its value stands upright where it
 *          fits between the flanks, else along the line, read from the right (both as in ISO 129-1, from memory).
 *          A word that would stand on another is left out: the application list and the slider's text say it too.
 */
import type { Application, ClipMeasurement, CurvePoint, Phase } from '../../measurement/clip-measurement.ts';
import type { Box } from '../viewer/box.ts';
import { dimensionLines, type DimensionLines } from '../viewer/dimension-lines.ts';
import type { CurveScale } from './curve-scale.ts';

export type PlateauNote = {
  /** From 1. */
  readonly number: number;
  readonly xCss: number;
  readonly lines: DimensionLines;
  readonly text: string;
  readonly upright: boolean;
  /** At the released level, from where the rod leaves it to beyond the dimension line. */
  readonly extension: { readonly fromCss: number; readonly toCss: number; readonly yCss: number };
  /** The held part with U at 95 % of the stroke. */
  readonly held: Box;
};

const TEXT_CSS = 17;
const BEYOND_CSS = 6;
const LEAST_HELD_CSS = 6;

/** A guess a little wide: it only sets how wide a line is broken and what may stand beside what. */
export const textWidthGuessCss = (text: string, sizeCss: number) => 0.47 * sizeCss * text.length;

export function plateauNotes(
  { curve, applications }: ClipMeasurement,
  scale: CurveScale,
  textOf: (application: Application) => string,
): PlateauNote[] {
  return applications.flatMap((application, index) => {
    const held = phaseOf(application, 'held');
    const released = phaseOf(application, 'released');
    if (!held || !released) return [];
    const [fromCss, toCss] = [xOf(curve, scale, held.from), xOf(curve, scale, held.to)];
    const zeroMm = levelMm(curve, released);
    const { value, U95 } = application.strokeMm;
    const [lowY, highY] = [scale.yAt(zeroMm), scale.yAt(zeroMm + value)];
    const xCss = (fromCss + toCss) / 2;
    const text = textOf(application);
    const widthCss = textWidthGuessCss(text, TEXT_CSS);
    const upright = widthCss + 2 * BEYOND_CSS < toCss - fromCss;
    const size = upright
      ? { widthCss, heightCss: TEXT_CSS + 3 }
      : { widthCss: TEXT_CSS + 3, heightCss: widthCss };
    const ends = [
      { xCss, yCss: lowY },
      { xCss, yCss: highY },
    ] as const;
    const screen = { widthCss: scale.widthCss, heightCss: scale.heightCss };
    return [
      {
        number: index + 1,
        xCss,
        lines: dimensionLines(ends, size, screen),
        text,
        upright,
        extension: {
          fromCss: xOf(curve, scale, released.to),
          toCss: xCss + BEYOND_CSS,
          yCss: lowY,
        },
        held: {
          leftCss: fromCss,
          topCss: scale.yAt(zeroMm + value + U95),
          widthCss: Math.max(LEAST_HELD_CSS, toCss - fromCss),
          heightCss: scale.yAt(zeroMm + value - U95) - scale.yAt(zeroMm + value + U95),
        },
      },
    ];
  });
}

export type PointNote = {
  readonly kind: 'ninety' | 'square';
  readonly xCss: number;
  readonly yCss: number;
  readonly word: 'left' | 'right' | 'none';
  /** Of its word: moved where two would stand on each other. */
  readonly wordYCss: number;
};

const WORD_CSS = { ninety: 38, square: 54 };
const LINE_CSS = 17;

export function pointNotes({ curve, applications, square }: ClipMeasurement, scale: CurveScale): PointNote[] {
  const squareAt = square && {
    xCss: scale.xAt(square.timeS),
    yCss: scale.yAt(square.strokeMm.value),
  };
  let freeFromCss = scale.leftCss;
  const notes = applications.flatMap((application): PointNote[] => {
    const applying = phaseOf(application, 'applying');
    const leftEdgeCss = freeFromCss;
    freeFromCss = endOf(curve, scale, application);
    if (!applying || !application.toNinetyPercentS) return [];
    const timeS = (curve[applying.from]?.timeS ?? 0) + application.toNinetyPercentS.value;
    const strokeMm = strokeAt(curve, timeS);
    if (strokeMm === null) return [];
    const [xCss, yCss] = [scale.xAt(timeS), scale.yAt(strokeMm)];
    const word = xCss - WORD_CSS.ninety > leftEdgeCss ? 'left' : 'none';
    return [{ kind: 'ninety', xCss, yCss, word, wordYCss: yCss }];
  });
  if (!squareAt) return notes;
  const near = notes.find(({ xCss, yCss }) => {
    return Math.abs(xCss - squareAt.xCss) < WORD_CSS.square && Math.abs(yCss - squareAt.yCss) < LINE_CSS;
  });
  const below = near ? Math.max(squareAt.yCss, near.yCss + LINE_CSS) : squareAt.yCss;
  const word = squareAt.xCss - WORD_CSS.square > scale.leftCss ? 'left' : 'right';
  return [...notes, { kind: 'square', ...squareAt, word, wordYCss: below }];
}

export type GapNote = {
  readonly kind: ClipMeasurement['gaps'][number]['kind'];
  readonly fromCss: number;
  readonly toCss: number;
  /** Middle of its word; null where another word stands there already. */
  readonly wordCss: number | null;
};

/** Open from the last frame seen to the next one. */
export function gapNotes(
  { curve, gaps }: ClipMeasurement,
  scale: CurveScale,
  wordOf: (kind: GapNote['kind']) => string,
): GapNote[] {
  const takenToCss = new Map<GapNote['kind'], number>();
  return gaps.map(({ kind, from, to }) => {
    const [fromCss, toCss] = [xOf(curve, scale, from - 1), xOf(curve, scale, to + 1)];
    const half = textWidthGuessCss(wordOf(kind), 14) / 2;
    const middle = Math.min(Math.max((fromCss + toCss) / 2, scale.leftCss + half), scale.rightCss - half);
    const free = middle - half > (takenToCss.get(kind) ?? 0);
    if (free) takenToCss.set(kind, middle + half + BEYOND_CSS);
    return { kind, fromCss, toCss, wordCss: free ? middle : null };
  });
}

function phaseOf({ phases }: Application, kind: Phase['kind']): Phase | null {
  return phases.find((phase) => phase.kind === kind) ?? null;
}

function xOf(curve: readonly CurvePoint[], scale: CurveScale, frame: number): number {
  return scale.xAt(curve[Math.min(curve.length - 1, Math.max(0, frame))]?.timeS ?? 0);
}

function endOf(curve: readonly CurvePoint[], scale: CurveScale, { phases }: Application): number {
  return xOf(curve, scale, phases.findLast(({ kind }) => kind !== 'released')?.to ?? 0);
}

/** Where the line of a phase at rest is drawn: the middle one of its frames. */
function levelMm(curve: readonly CurvePoint[], { from, to }: Phase): number {
  const seen = curve.slice(from, to + 1).flatMap(({ stroke }) => (stroke ? [stroke.value] : []));
  return seen.toSorted((a, b) => a - b)[seen.length >> 1] ?? 0;
}

/** On the drawn line: between the frames before and after. */
function strokeAt(curve: readonly CurvePoint[], timeS: number): number | null {
  const after = curve.findIndex((point) => point.stroke !== null && point.timeS >= timeS);
  const [b, a] = [curve[after], curve.slice(0, after).findLast(({ stroke }) => stroke !== null)];
  if (!b?.stroke) return null;
  if (!a?.stroke) return b.stroke.value;
  const share = (timeS - a.timeS) / (b.timeS - a.timeS);
  return a.stroke.value + share * (b.stroke.value - a.stroke.value);
}
