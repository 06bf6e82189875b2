/** Where a curve is open, and why. What is hidden without leaving the curve open is said over the picture only. */
import type { FollowedKind } from '../../marks/track.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { CurveScale } from './curve-scale.ts';
import { textWidthGuessCss, xOfFrame } from './phase-place.ts';

/** Frames, both ends open themselves. */
export type Gap = { readonly from: number; readonly to: number; readonly unseen: FollowedKind | null };

export type GapNote = {
  readonly fromCss: number;
  readonly toCss: number;
  readonly word: string;
  /** Too narrow to be seen open: one tick, and a word only where no wider gap has one. */
  readonly narrow: boolean;
  /** Middle of the word; null where another stands there already. */
  readonly wordCss: number | null;
};

const TEXT_CSS = 15;
const APART_CSS = 6;
const NARROW_CSS = 8;

/** Of the angle only where the stroke is known: the rest is said there. */
export function gapsIn({ curve, gaps }: ClipMeasurement, of: 'stroke' | 'angle'): Gap[] {
  const cause = of === 'stroke' ? 'clevis-pin' : 'camshaft-end';
  const found: { from: number; to: number }[] = [];
  curve.forEach(({ stroke, armAngleRad }, frame) => {
    if (of === 'stroke' ? stroke : armAngleRad || !stroke) return;
    const last = found.at(-1);
    if (last?.to === frame - 1) last.to = frame;
    else found.push({ from: frame, to: frame });
  });
  return found.map(({ from, to }) => {
    const because = gaps.some((gap) => gap.kind === cause && gap.from <= to && gap.to >= from);
    return { from, to, unseen: because ? cause : null };
  });
}

/** Open from the last frame seen to the next one. */
export function gapNotes(
  { curve }: ClipMeasurement,
  gaps: readonly Gap[],
  scale: CurveScale,
  wordOf: (unseen: FollowedKind | null) => string,
): GapNote[] {
  const spans = gaps.map(({ from, to, unseen }) => {
    const [fromCss, toCss] = [xOfFrame(curve, scale, from - 1), xOfFrame(curve, scale, to + 1)];
    return { fromCss, toCss, unseen, narrow: toCss - fromCss < NARROW_CSS };
  });
  const worded = spans.some(({ narrow }) => !narrow) ? spans.filter(({ narrow }) => !narrow) : [spans[0]];
  let takenToCss = 0;
  return spans.map((span) => {
    const { fromCss, toCss, unseen, narrow } = span;
    const word = wordOf(unseen);
    const half = textWidthGuessCss(word, TEXT_CSS) / 2;
    const middle = Math.min(Math.max((fromCss + toCss) / 2, scale.leftCss + half), scale.rightCss - half);
    const free = worded.includes(span) && middle - half > takenToCss;
    if (free) takenToCss = middle + half + APART_CSS;
    return { fromCss, toCss, narrow, word, wordCss: free ? middle : null };
  });
}
