/**
 * Where time, stroke and arm angle lie on the chart, in screen pixels: text and touch keep their size at every width.
 *
 * Model    time runs to the right by the clip's own times, not by frame numbers; stroke runs up from the released place, its ticks as
 *          on the finding's bar; the arm angle has a strip of its own beneath, on the same time.
 * Assumes  at least one frame, times rising.
 */
import type { LengthUnit } from '../../basics/length-text.ts';
import { degFromRad, radFromDeg } from '../../basics/units.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { barScale } from '../sheet/bar-scale.ts';

export type CurveScale = {
  readonly widthCss: number;
  readonly heightCss: number;
  readonly leftCss: number;
  readonly rightCss: number;
  readonly topCss: number;
  /** The time axis. */
  readonly baseCss: number;
  readonly xAt: (timeS: number) => number;
  readonly timeAt: (xCss: number) => number;
  readonly yAt: (strokeMm: number) => number;
  readonly limitCss: number | null;
  readonly strokeTicks: readonly { readonly atMm: number; readonly long: boolean }[];
  readonly timeTicks: readonly number[];
  readonly angle: AngleStrip | null;
};

export type AngleStrip = {
  readonly topCss: number;
  readonly baseCss: number;
  readonly yAt: (angleRad: number) => number;
  readonly ticksDeg: readonly number[];
};

const LEFT_CSS = 44;
const RIGHT_CSS = 14;
/** Room above the highest value for the limit's number. */
const HEAD_CSS = 24;
/** Room for the applications' numbers. */
const NUMBERS_CSS = 30;
/** Between the released place and the time axis: what is said of gaps stands there. */
export const GAP_LANE_CSS = 26;
const ANGLE_APART_CSS = 28;
const TICK_TEXT_CSS = 22;
export const HANDLE_LANE_CSS = 48;
/** Heights grow with the width, between what a phone has room for and what a sheet of paper needs. */
const PLOT = { share: 0.3, leastCss: 176, mostCss: 300 };
const ANGLE = { share: 0.08, leastCss: 60, mostCss: 96 };
/** Beneath the picture on a screen that does not scroll. */
const LOW = { plotCss: 104, angleCss: 44 };

export function curveScale(
  { curve, applications }: ClipMeasurement,
  shown: {
    readonly widthCss: number;
    readonly limitMm: number | null;
    readonly unit: LengthUnit;
    readonly low?: boolean;
  },
): CurveScale {
  const { widthCss, limitMm, unit, low = false } = shown;
  const rightCss = widthCss - RIGHT_CSS;
  const [firstS, lastS] = [curve[0]?.timeS ?? 0, curve.at(-1)?.timeS ?? 0];
  const perSecond = (rightCss - LEFT_CSS) / Math.max(lastS - firstS, 1e-3);

  const tops = [
    ...curve.flatMap(({ stroke }) => (stroke ? [stroke.value + stroke.u] : [])),
    ...applications.map(({ strokeMm }) => strokeMm.value + strokeMm.U95),
  ];
  const { endMm, ticks } = barScale([...(limitMm === null ? [] : [limitMm]), Math.max(0, ...tops)], unit);
  const topCss = HEAD_CSS + (applications.length > 1 ? NUMBERS_CSS : 0);
  const plotCss = low ? LOW.plotCss : heightFor(PLOT, widthCss);
  const zeroCss = topCss + plotCss;
  const baseCss = zeroCss + GAP_LANE_CSS;

  const yAt = (strokeMm: number) => zeroCss - (strokeMm / endMm) * plotCss;
  const angleCss = low ? LOW.angleCss : heightFor(ANGLE, widthCss);
  const angle = angleStrip(curve, baseCss + ANGLE_APART_CSS, angleCss);
  return {
    widthCss,
    heightCss: (angle ? angle.baseCss : baseCss) + TICK_TEXT_CSS + HANDLE_LANE_CSS,
    leftCss: LEFT_CSS,
    rightCss,
    topCss,
    baseCss,
    xAt: (timeS) => LEFT_CSS + (timeS - firstS) * perSecond,
    timeAt: (xCss) => firstS + (xCss - LEFT_CSS) / perSecond,
    yAt,
    limitCss: limitMm === null ? null : yAt(limitMm),
    strokeTicks: ticks,
    timeTicks: evenTicks(firstS, lastS, stepFor(44 / perSecond, TIME_STEPS_S)),
    angle,
  };
}

const TIME_STEPS_S = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120];
const ANGLE_STEPS_DEG = [5, 10, 20, 30, 45];
const SQUARE_DEG = 90;

function angleStrip(curve: ClipMeasurement['curve'], topCss: number, heightCss: number): AngleStrip | null {
  const seen = curve.flatMap(({ armAngleRad }) => (armAngleRad ? [degFromRad(armAngleRad.value)] : []));
  if (seen.length === 0) return null;
  const [low, high] = [Math.min(SQUARE_DEG, ...seen) - 2, Math.max(SQUARE_DEG, ...seen) + 2];
  const baseCss = topCss + heightCss;
  const perDegree = heightCss / (high - low);
  // Counted from the square line, which must have its tick.
  const step = stepFor(20 / perDegree, ANGLE_STEPS_DEG);
  return {
    topCss,
    baseCss,
    yAt: (angleRad) => baseCss - (degFromRad(angleRad) - low) * perDegree,
    ticksDeg: evenTicks(low - SQUARE_DEG, high - SQUARE_DEG, step).map((deg) => deg + SQUARE_DEG),
  };
}

export const SQUARE_RAD = radFromDeg(SQUARE_DEG);

function heightFor({ share, leastCss, mostCss }: typeof PLOT, widthCss: number): number {
  return Math.min(mostCss, Math.max(leastCss, widthCss * share));
}

function stepFor(least: number, steps: readonly number[]): number {
  return steps.find((step) => step >= least) ?? (steps.at(-1) as number);
}

function evenTicks(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, n) => (first + n) * step);
}
