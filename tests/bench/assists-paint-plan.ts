/** Which scenes a set has: so many of each kind. */
import { CONFUSERS, drawScene, type Ranges, type SceneDraw, type SceneKind } from './assists-paint-draws.ts';

export type Counts = {
  readonly band: number;
  readonly barely: number;
  readonly otherColour: number;
  readonly bare: number;
  readonly ofEachConfuser: number;
  readonly hidden: number;
  readonly dark: number;
};

export const WIDER_COUNTS: Counts = {
  band: 200,
  barely: 20,
  otherColour: 24,
  bare: 60,
  ofEachConfuser: 16,
  hidden: 10,
  dark: 10,
};

export const HELD_BACK_COUNTS: Counts = {
  band: 150,
  barely: 10,
  otherColour: 12,
  bare: 45,
  ofEachConfuser: 14,
  hidden: 8,
  dark: 8,
};

export const TUNING_COUNTS: Counts = {
  band: 240,
  barely: 16,
  otherColour: 16,
  bare: 60,
  ofEachConfuser: 24,
  hidden: 8,
  dark: 8,
};

export function scenesOf(ranges: Ranges, counts: Counts): readonly SceneDraw[] {
  const many = (count: number, kind: SceneKind) => Array.from({ length: count }, () => kind);
  const kinds: SceneKind[] = [
    ...many(counts.band, { is: 'band' }),
    ...many(counts.barely, { is: 'barely' }),
    ...many(counts.otherColour, { is: 'other colour' }),
    ...many(counts.bare, { is: 'bare' }),
    ...CONFUSERS.flatMap((what) => many(counts.ofEachConfuser, { is: 'confuser', what })),
    ...many(counts.hidden, { is: 'hidden' }),
    ...many(counts.dark, { is: 'dark' }),
  ];
  return kinds.map((kind, index) => drawScene(ranges, kind, index));
}
