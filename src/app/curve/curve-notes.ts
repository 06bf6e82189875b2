/**
 * What is written into the chart: each application's stroke as a dimension, the limit's side, 90 % and square as ticks, gaps.
 *
 * Model    the dimension stands in the middle of the held part, from the released level up to it; its value stands upright where it
 *          fits between the flanks, else along the line, read from the right (both as in ISO 129-1, from memory).
 *          What has no room is left out: the list of applications and the slider's text say it too.
 */
import type { Application, ClipMeasurement, CurvePoint, Phase } from '../../measurement/clip-measurement.ts';
import type { Box } from '../viewer/box.ts';
import { type DimensionLines, dimensionLines } from '../viewer/dimension-lines.ts';
import type { CurveScale } from './curve-scale.ts';

export type PlateauNote = {
  /** From 1. */
  readonly number: number;
  readonly xCss: number;
  readonly lines: DimensionLines;
  /** Empty where there is no room for it. */
  readonly text: string;
  readonly textCss: number;
  readonly upright: boolean;
  /** At the released level, from where the rod leaves it to beyond the dimension line. */
  readonly extension: { readonly fromCss: number; readonly toCss: number; readonly yCss: number };
  /** The held part with U at 95 % of the stroke. */
  readonly held: Box;
};

/** Of a value in its break: the second where the first has no room. */
const TEXT_SIZES_CSS = [17, 14] as const;
/** Arrowheads and room at both ends of the break, as dimension-lines.ts draws them. */
const ARROWS_CSS = 52;
const BEYOND_CSS = 6;
const LEAST_HELD_CSS = 6;

/** A guess a little wide: it only sets how wide a line is broken and what may stand beside what. */
export const textWidthGuessCss = (text: string, sizeCss: number) => 0.42 * sizeCss * text.length;

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
    const { U95 } = application.strokeMm;
    const heldMm = zeroMm + application.strokeMm.value;
    const [lowY, highY] = [scale.yAt(zeroMm), scale.yAt(heldMm)];
    const xCss = (fromCss + toCss) / 2;
    const value = textOf(application);
    const { textCss, upright, size, fits } = textPlace(value, {
      widthCss: flankRoomCss(curve, scale, application),
      heightCss: lowY - highY,
    });
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
        text: fits ? value : '',
        textCss,
        upright,
        extension: {
          fromCss: xOf(curve, scale, released.to),
          toCss: xCss + BEYOND_CSS,
          yCss: lowY,
        },
        held: {
          leftCss: fromCss,
          topCss: scale.yAt(heldMm + U95),
          widthCss: Math.max(LEAST_HELD_CSS, toCss - fromCss),
          heightCss: scale.yAt(heldMm - U95) - scale.yAt(heldMm + U95),
        },
      },
    ];
  });
}

type TextPlace = {
  readonly textCss: number;
  readonly upright: boolean;
  readonly size: { readonly widthCss: number; readonly heightCss: number };
  readonly fits: boolean;
};

function textPlace(text: string, room: { readonly widthCss: number; readonly heightCss: number }): TextPlace {
  const [large, small] = TEXT_SIZES_CSS;
  const widthCss = textWidthGuessCss(text, large);
  if (widthCss + 2 * BEYOND_CSS < room.widthCss)
    return { textCss: large, upright: true, size: { widthCss, heightCss: large + 3 }, fits: true };
  const along = (textCss: number) => textWidthGuessCss(text, textCss) + ARROWS_CSS < room.heightCss;
  const textCss = along(large) ? large : small;
  const fits = along(textCss);
  const lengthCss = fits ? textWidthGuessCss(text, textCss) : 0;
  return { textCss, upright: false, size: { widthCss: textCss + 3, heightCss: lengthCss }, fits };
}

/** Between the flanks at half their height. */
function flankRoomCss(curve: readonly CurvePoint[], scale: CurveScale, application: Application): number {
  const middle = (kind: Phase['kind'], otherwise: 'from' | 'to') => {
    const phase = phaseOf(application, kind);
    if (phase) return xOf(curve, scale, Math.round((phase.from + phase.to) / 2));
    return xOf(curve, scale, phaseOf(application, 'held')?.[otherwise] ?? 0);
  };
  return middle('releasing', 'to') - middle('applying', 'from');
}

export type PointNote = {
  readonly kind: 'ninety' | 'square';
  readonly xCss: number;
  readonly yCss: number;
  /** Middle of its word, left of the curve; null where there is no room. */
  readonly wordCss: number | null;
};

const WORD_CSS = { ninety: 40, square: 52 };
const LINE_CSS = 17;

export function pointNotes({ curve, applications, square }: ClipMeasurement, scale: CurveScale): PointNote[] {
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
    const wordCss = xCss - WORD_CSS.ninety > leftEdgeCss ? yCss : null;
    return [{ kind: 'ninety', xCss, yCss, wordCss }];
  });
  const [xCss, yCss] = square ? [scale.xAt(square.timeS), scale.yAt(square.strokeMm.value)] : [0, 0];
  const squareNote = {
    kind: 'square',
    xCss,
    yCss,
    wordCss: xCss - WORD_CSS.square > scale.leftCss ? yCss : null,
  } as const;
  return apart(square ? [...notes, squareNote] : notes, scale.limitCss);
}

/** From the top: each word off the limit's line, and below the word above it at the same flank. */
function apart(notes: readonly PointNote[], limitCss: number | null): PointNote[] {
  const placed: PointNote[] = [];
  for (const note of notes.toSorted((a, b) => a.yCss - b.yCss)) {
    const above = placed.findLast(
      ({ xCss, wordCss }) => wordCss !== null && Math.abs(xCss - note.xCss) < WORD_CSS.square,
    );
    placed.push({ ...note, wordCss: note.wordCss === null ? null : lowered(note.wordCss, above, limitCss) });
  }
  return placed;
}

function lowered(wantedCss: number, above: PointNote | undefined, limitCss: number | null): number {
  const free = Math.max(wantedCss, (above?.wordCss ?? Number.NEGATIVE_INFINITY) + LINE_CSS);
  return limitCss !== null && Math.abs(free - limitCss) < LINE_CSS / 2 + 2
    ? limitCss + LINE_CSS / 2 + 4
    : free;
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
