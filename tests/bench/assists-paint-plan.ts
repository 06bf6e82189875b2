/** Which scenes a set has: so many of each kind. */
import {
  CONFUSERS,
  drawScene,
  OTHER_PAINTS,
  type Ranges,
  type SceneDraw,
  type SceneKind,
} from './assists-paint-draws.ts';

export type Counts = {
  readonly band: number;
  readonly barely: number;
  readonly ofEachOtherColour: number;
  readonly bare: number;
  readonly ofEachConfuser: number;
  readonly hidden: number;
  readonly dark: number;
};

export const WIDER_COUNTS: Counts = {
  band: 200,
  barely: 20,
  ofEachOtherColour: 6,
  bare: 60,
  ofEachConfuser: 16,
  hidden: 10,
  dark: 10,
};

export const TUNING_COUNTS: Counts = {
  band: 240,
  barely: 16,
  ofEachOtherColour: 4,
  bare: 60,
  ofEachConfuser: 24,
  hidden: 8,
  dark: 8,
};

export const SMALL_COUNTS: Counts = {
  band: 400,
  barely: 20,
  ofEachOtherColour: 18,
  bare: 100,
  ofEachConfuser: 40,
  hidden: 20,
  dark: 30,
};

/** Of the third study to the sixth. */
export const THIRD_COUNTS: Counts = {
  band: 160,
  barely: 6,
  ofEachOtherColour: 4,
  bare: 40,
  ofEachConfuser: 13,
  hidden: 8,
  dark: 8,
};

/** Of MANY. */
export const MANY_COUNTS: Counts = {
  band: 320,
  barely: 10,
  ofEachOtherColour: 0,
  bare: 40,
  ofEachConfuser: 34,
  hidden: 0,
  dark: 0,
};

/** Of MANY_SMALL and MANY_MORE. */
export const MANY_MORE_COUNTS: Counts = {
  band: 420,
  barely: 10,
  ofEachOtherColour: 0,
  bare: 60,
  ofEachConfuser: 42,
  hidden: 0,
  dark: 0,
};

/** Of the seventh study and those since. */
export const HELD_BACK_COUNTS: Counts = {
  band: 320,
  barely: 12,
  ofEachOtherColour: 8,
  bare: 80,
  ofEachConfuser: 26,
  hidden: 16,
  dark: 16,
};

export const FURTHER_OUT_COUNTS: Counts = {
  band: 40,
  barely: 0,
  ofEachOtherColour: 0,
  bare: 12,
  ofEachConfuser: 4,
  hidden: 0,
  dark: 0,
};

export function scenesOf(ranges: Ranges, counts: Counts): readonly SceneDraw[] {
  const many = (count: number, kind: SceneKind) => Array.from({ length: count }, () => kind);
  const kinds: SceneKind[] = [
    ...many(counts.band, { is: 'band' }),
    ...many(counts.barely, { is: 'barely' }),
    ...OTHER_PAINTS.flatMap((what) => many(counts.ofEachOtherColour, { is: 'other colour', what })),
    ...many(counts.bare, { is: 'bare' }),
    ...CONFUSERS.flatMap((what) => many(counts.ofEachConfuser, { is: 'confuser', what })),
    ...many(counts.hidden, { is: 'hidden' }),
    ...many(counts.dark, { is: 'dark' }),
  ];
  return kinds.map((kind, index) => drawScene(ranges, kind, index));
}
