/**
 * Which digit stands where beside a tape's whole inches: the odds of each (digit-odds.ts) in windows of one height, a step apart, about every whole inch alike.
 */
import { type BladeStrip, STRIP_STEP_MM } from './blade-strip.ts';
import { digitOdds, KINDS, NONE } from './digit-odds.ts';
import { amountIn, LOOK_LENGTH, lookIn, type SlopeSums, type Turn } from './digit-window.ts';

/** Of a digit's height. */
const STEP = 1 / 6;
const BESIDE_MM = 11;
const ACROSS_MM = [2.5, 23] as const;
/** Of a digit's slopes: with less nothing is printed there. */
const LEAST_AMOUNT = 0.22;
/** Places that are tried of each turn and height. */
const MOST_PLACES = 12;
/** What a place without print tells of a digit. */
const BLANK = -4;

/** Odds of all kinds, for each whole inch, at places a step apart about it. */
export type DigitField = {
  readonly turn: Turn;
  readonly inches: number;
  readonly wide: number;
  readonly high: number;
  readonly odds: Float32Array;
};

/** Of both turns of a digit that stands, or that lies on its side. */
export function digitFields(
  strip: BladeStrip,
  sums: SlopeSums,
  wholesMm: readonly number[],
  heightMm: number,
  isUpright: boolean,
): readonly DigitField[] {
  const step = (STEP * heightMm) / STRIP_STEP_MM;
  const half = Math.round(BESIDE_MM / STRIP_STEP_MM / step);
  const wide = 2 * half + 1;
  const [from, to] = ACROSS_MM.map((mm) => mm / STRIP_STEP_MM) as [number, number];
  const high = Math.floor((to - from) / step) + 1;
  const length = wholesMm.length * wide * high * KINDS;
  const turns: readonly Turn[] = isUpright ? [0, 2] : [1, 3];
  const fields = turns.map((turn) => ({
    turn,
    inches: wholesMm.length,
    wide,
    high,
    odds: new Float32Array(length).fill(BLANK),
  }));
  const look = new Float32Array(LOOK_LENGTH);
  let at = 0;
  for (const mm of wholesMm) {
    const middle = (mm - strip.firstMm) / strip.stepMm;
    for (let j = 0; j < high; j++)
      for (let i = -half; i <= half; i++, at += KINDS) {
        const window = { x: middle + i * step, y: from + j * step, heightMm };
        if (amountIn(sums, window, isUpright) < LEAST_AMOUNT) {
          for (const { odds } of fields) odds[at + NONE] = Math.LN2;
          continue;
        }
        lookIn(sums, window, isUpright, look);
        for (const { turn, odds } of fields) digitOdds(look, turn, odds, at);
      }
  }
  return fields;
}

/** Where beside most inches some digit stands. */
export function likelyPlaces({ inches, wide, high, odds }: DigitField) {
  const places = Array.from({ length: wide * high }, (_, at) => {
    let sum = 0;
    for (let inch = 0; inch < inches; inch++) {
      const none = odds[(inch * wide * high + at) * KINDS + NONE] as number;
      sum += Math.max(-3, Math.log(Math.max(1e-3, 2 - Math.exp(none))));
    }
    return { i: at % wide, j: Math.floor(at / wide), sum };
  });
  return places.sort((a, b) => b.sum - a.sum).slice(0, MOST_PLACES);
}

/** None of them beyond the field. */
export function oddsAt(
  { wide, high, odds }: DigitField,
  inch: number,
  i: number,
  j: number,
  kind: number,
): number {
  if (i < 0 || j < 0 || i >= wide || j >= high) return kind === NONE ? Math.LN2 : BLANK;
  return Math.max(BLANK, odds[((inch * high + j) * wide + i) * KINDS + kind] as number);
}
