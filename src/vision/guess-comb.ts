/**
 * Strokes that come again and again across a strip: where those of whole inches may be.
 *
 * Model    darkness along the strip, its rows' mean less that beside it on both sides; a comb of places, equal steps that grow or shrink, on it:
 *          darkness at its teeth less that halfway between them, over the stretch of teeth where that is most; slants of the strokes and bows of the comb in steps; the best few that differ
 * Assumes  whole inches are 0.85 to 2.2 of the strip's width: blades of 12 to 27 mm
 * Fails    an empty list
 */
import { placeIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import type { Strip } from './guess-tape.ts';
import { levelAt } from './level-at.ts';

/** Places of whole inches along the strip. */
export type Comb = { readonly places: readonly number[]; readonly pitchPx: number; readonly score: number };

const PITCHES: readonly [number, number] = [0.85, 2.2];
const SHEARS = [-0.24, -0.16, -0.08, 0, 0.08, 0.16, 0.24];
/** Of the spacing, from one to the next. */
const BOWS = [-0.02, -0.01, 0, 0.01, 0.02];
const LEAST_TEETH = 4;
const LEAST_SCORE = 1;
/** What a tooth of no meaning has over the place halfway, at times. */
const USUAL = 0.25;
/** Of the strip's width: what is compared with a stroke lies so far beside it. */
const BESIDE = 0.075;
/** Levels of 255. */
const LEAST_DARK = 3;

export function combs(gray: Gray, strip: Strip): readonly Comb[] {
  const found: Comb[] = [];
  const [least, most] = PITCHES.map((by) => by * strip.widthPx) as [number, number];
  for (const shear of SHEARS) {
    const dark = darkness(gray, strip, shear);
    for (let pitch = Math.max(10, least); pitch < Math.min(most, strip.lengthPx / LEAST_TEETH); pitch *= 1.02)
      for (const bow of BOWS)
        for (let phase = 0; phase < pitch; phase += Math.max(1, pitch / 28)) {
          const comb = combAt(dark, strip.lengthPx, pitch, bow, phase);
          if (comb && comb.score > LEAST_SCORE) found.push(comb);
        }
  }
  found.sort((a, b) => b.score - a.score);
  const kept: Comb[] = [];
  for (const comb of found) {
    if (kept.length >= 6) break;
    const isNew = kept.every(
      (other) =>
        Math.abs(comb.pitchPx / other.pitchPx - 1) > 0.06 ||
        Math.abs((comb.places[0] ?? 0) - (other.places[0] ?? 0)) > 0.12 * comb.pitchPx,
    );
    if (isNew) kept.push(comb);
  }
  return kept;
}

/** Darker than on both sides, over what the darkest are; a pixel apart. A shadow's edge has one side only. */
function darkness(gray: Gray, strip: Strip, shear: number): Float64Array {
  const count = Math.ceil(strip.lengthPx);
  const rows = Math.max(4, Math.min(12, Math.round(strip.widthPx / 3)));
  const level = Float64Array.from({ length: count }, (_, s) => {
    let sum = 0;
    for (let row = 0; row < rows; row++) {
      const t = strip.widthPx * (0.1 + (0.8 * (row + 0.5)) / rows);
      const [x, y] = placeIn(strip, s + shear * t, t);
      sum += levelAt(gray, x, y);
    }
    return sum / rows;
  });
  const beside = Math.max(2, Math.round(BESIDE * strip.widthPx));
  const dark = level.map((here, i) => {
    const [before, after] = [level[i - beside] ?? here, level[i + beside] ?? here];
    return Math.max(0, Math.min(before, after) - here);
  });
  const strongest = [...dark].sort((a, b) => b - a).slice(0, Math.max(6, Math.round(count / 12)));
  const unit = Math.max(LEAST_DARK, strongest.reduce((sum, v) => sum + v, 0) / strongest.length);
  return dark.map((v) => Math.min(1.5, v / unit));
}

function combAt(
  dark: Float64Array,
  lengthPx: number,
  pitch: number,
  bow: number,
  phase: number,
): Comb | null {
  const places: number[] = [];
  let [at, step] = [phase, pitch];
  while (at < lengthPx - 1 && step > 0.6 * pitch && step < 1.7 * pitch) {
    places.push(at);
    at += step;
    step *= 1 + bow;
  }
  if (places.length < LEAST_TEETH) return null;
  // The edge may run on beyond the blade: the stretch of teeth that stands out most.
  let [sum, from, best, bestFrom, bestTo] = [0, 0, 0, 0, 0];
  for (const [i, place] of places.entries()) {
    const halfway = place + ((places[i + 1] ?? place + step) - place) / 2;
    sum += valueAt(dark, place) - valueAt(dark, halfway) - USUAL;
    if (sum < 0) [sum, from] = [0, i + 1];
    if (sum > best) [best, bestFrom, bestTo] = [sum, from, i + 1];
  }
  if (bestTo - bestFrom < LEAST_TEETH) return null;
  return { places: places.slice(bestFrom, bestTo), pitchPx: pitch, score: best };
}

function valueAt(dark: Float64Array, s: number): number {
  const i = Math.max(0, Math.min(dark.length - 2, Math.floor(s)));
  return (dark[i] as number) + (s - i) * ((dark[i + 1] as number) - (dark[i] as number));
}
