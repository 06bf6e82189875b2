/**
 * A simulated steel tape: where its graduations really are along the blade, and how the blade bends as a hand holds it.
 *
 * Print: drift from the first to the last graduation that is marked, as much as accuracy class II allows between any two marks up to a
 * metre apart: (0.3 + 0.2 L) mm, L in metres rounded up (Directive 2014/32/EU, annex X (MI-008), from memory); a wave of the print on top,
 * and each stroke for itself. So the whole allowance of a metre lies within the few inches of the picture: nearly every tape is better.
 * Bow: the blade is an arc of a circle through its zero and a point a foot farther on; common practice, no source.
 */
import type { Draw } from '../../src/basics/random.ts';

const CLASS_II_MM = 0.5;
const WAVE_MM = 0.1;
const STROKE_MM = 0.05;
/** Steel, up to 30 K from where it is right: 11.5e-6 / K, rectangular. */
export const WARMTH = (30 * 11.5e-6) / Math.sqrt(3);
/** Sagitta over CHORD_MM. */
export const BOW_MM = 2.5;
const CHORD_MM = 300;

/** Place along the blade of a graduation, from the zero, mm. */
export type Print = (readingMm: number) => number;

/** marked: first and last reading; warmth: strain. */
export function drawPrint(draw: Draw, warmth: number, [first, last]: readonly [number, number]): Print {
  const drift = draw.uniform(-CLASS_II_MM, CLASS_II_MM) / Math.max(last - first, 1);
  const wave = draw.uniform(-WAVE_MM, WAVE_MM);
  const [waveMm, phase] = [draw.uniform(80, 300), draw.uniform(0, 2 * Math.PI)];
  const strokes = new Map<number, number>();
  return (readingMm) => {
    const stroke = strokes.get(readingMm) ?? draw.normal(0, STROKE_MM);
    strokes.set(readingMm, stroke);
    const off =
      drift * (readingMm - first) + wave * Math.sin((2 * Math.PI * readingMm) / waveMm + phase) + stroke;
    return (readingMm + off) * (1 + warmth);
  };
}

/** Of the point s along the blade: its place along the chord, and out of it. */
export function alongBow(sagittaMm: number, s: number): readonly [along: number, out: number] {
  if (Math.abs(sagittaMm) < 1e-6) return [s, 0];
  const radius = (CHORD_MM ** 2 / 4 + sagittaMm ** 2) / (2 * sagittaMm);
  const first = Math.asin(CHORD_MM / 2 / radius);
  const here = first - s / radius;
  return [radius * (Math.sin(first) - Math.sin(here)), radius * (Math.cos(here) - Math.cos(first))];
}
