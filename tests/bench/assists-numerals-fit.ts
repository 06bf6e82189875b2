/**
 * npx tsx tests/bench/assists-numerals-fit.ts: the weights by which digits on a tape are told, fitted to photographed prints, written to
 * src/vision/digit-weights.ts.
 *
 * Model    multinomial logistic regression with a ridge over looks (digit-window.ts), by Adam; of each photo its digits, each a few times about where and
 *          how large it is, and as many windows that hold none: somewhere, beside a digit, or a digit lying on its side or of another size
 * Assumes  typefaces and seeds that are not held back
 * Source   Kingma, Ba: Adam, ICLR 2015 (from memory)
 */
import { writeFileSync } from 'node:fs';
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { bladeStrip } from '../../src/vision/blade-strip.ts';
import {
  type DigitWindow,
  LOOK_LENGTH,
  lookIn,
  slopeSums,
  TURNED,
  type Turn,
} from '../../src/vision/digit-window.ts';
import { facesOf, TRAINED_FACES } from './numeral-glyphs.ts';
import { FIRST_INCH, latticeOn, type TrueWindow, windowOf } from './numeral-lattice.ts';
import { photographTape } from './numeral-pictures.ts';
import { INCH_MM, printTape } from './numeral-print.ts';

const SEEDS = { first: 1000, count: Number(process.argv[2] ?? 350) };
const KINDS = 11;
const NONE = 10;
const EACH = 3;
const PASSES = 24;
const BATCH = 64;
const RIDGE = 2e-5;

type Sample = { readonly kind: number; readonly look: Float32Array };

function samplesOf(seed: number): readonly Sample[] {
  const draw = drawFrom(seed);
  const print = printTape(draw, faces);
  const photo = photographTape(draw, print);
  const lattice = latticeOn(draw, photo, print);
  if (!lattice) return [];
  const strip = bladeStrip(photo.gray, lattice, [
    (FIRST_INCH - 0.5) * INCH_MM,
    (FIRST_INCH + print.inches + 0.5) * INCH_MM,
  ]);
  const sums = slopeSums(strip);
  const samples: Sample[] = [];
  const add = (kind: number, window: DigitWindow, turn: Turn) => {
    const seen = new Float32Array(LOOK_LENGTH);
    lookIn(sums, window, turn % 2 === 0, seen);
    const places = TURNED[turn] as Int32Array;
    samples.push({ kind, look: Float32Array.from(places, (place) => seen[place] as number) });
  };
  const windows = print.digits
    .map((digit) => windowOf(digit, photo, lattice, strip))
    .filter(({ x }) => x > 20 && x < strip.columns - 20);
  const isOne = (window: DigitWindow, turn: Turn) =>
    windows.some(
      (each) =>
        Math.hypot(each.x - window.x, each.y - window.y) * 0.2 < 0.26 * each.heightMm &&
        Math.abs(Math.log(each.heightMm / window.heightMm)) < 0.3 &&
        (each.turn - turn) % 2 === 0,
    );
  for (const window of windows)
    for (let i = 0; i < EACH; i++) {
      add(window.digit, near(draw, window, 0.06, 0.07), window.turn);
      const [other, turn] = elsewhere(draw, windows, strip.columns);
      if (!isOne(other, turn)) add(NONE, other, turn);
    }
  return samples;
}

function near(draw: Draw, { x, y, heightMm }: DigitWindow, off: number, size: number): DigitWindow {
  const by = (5 * off * heightMm) as number;
  return {
    x: x + draw.normal(0, by),
    y: y + draw.normal(0, by),
    heightMm: heightMm * Math.exp(draw.normal(0, size)),
  };
}

function elsewhere(
  draw: Draw,
  windows: readonly TrueWindow[],
  columns: number,
): readonly [DigitWindow, Turn] {
  const any = Math.floor(draw.uniform(0, 4)) as Turn;
  const about = windows[Math.floor(draw.uniform(0, windows.length))] as TrueWindow;
  const turn = draw.uniform(0, 1) < 0.7 ? about.turn : any;
  const way = draw.uniform(0, 1);
  if (way < 0.35)
    return [
      { x: draw.uniform(0, columns), y: draw.uniform(10, 120), heightMm: draw.uniform(3.5, 10.5) },
      turn,
    ];
  if (way < 0.8) return [near(draw, about, 0.6, 0.1), turn];
  return [near(draw, about, 0.1, 0.5), any];
}

function fitted(samples: readonly Sample[]): Float32Array {
  const length = LOOK_LENGTH + 1;
  const weights = new Float32Array(KINDS * length);
  const [first, second] = [new Float32Array(weights.length), new Float32Array(weights.length)];
  const slope = new Float32Array(weights.length);
  const draw = drawFrom(5);
  // Digits together count as much as none.
  const counts = new Float64Array(KINDS);
  for (const { kind } of samples) counts[kind] = (counts[kind] as number) + 1;
  const share = Float64Array.from(
    counts,
    (count, kind) => ((kind === NONE ? 0.5 : 0.05) * samples.length) / count,
  );
  const odds = new Float64Array(KINDS);
  let step = 0;
  for (let pass = 0; pass < PASSES; pass++) {
    const rate = 0.05 * (1 - pass / PASSES) + 1e-4;
    let loss = 0;
    let right = 0;
    for (let at = 0; at < samples.length; at += BATCH) {
      slope.fill(0);
      for (let i = 0; i < BATCH; i++) {
        const { kind, look } = samples[Math.floor(draw.uniform(0, samples.length))] as Sample;
        let most = -Infinity;
        for (let k = 0; k < KINDS; k++) {
          let sum = weights[k * length] as number;
          for (let j = 0; j < LOOK_LENGTH; j++)
            sum += (weights[k * length + 1 + j] as number) * (look[j] as number);
          odds[k] = sum;
          if (sum > most) most = sum;
        }
        let total = 0;
        for (let k = 0; k < KINDS; k++) total += Math.exp((odds[k] as number) - most);
        const weight = share[kind] as number;
        loss -= weight * ((odds[kind] as number) - most - Math.log(total));
        if (odds[kind] === most) right++;
        for (let k = 0; k < KINDS; k++) {
          const p = Math.exp((odds[k] as number) - most) / total;
          const pull = (weight * (p - (k === kind ? 1 : 0))) / BATCH;
          slope[k * length] = (slope[k * length] as number) + pull;
          for (let j = 0; j < LOOK_LENGTH; j++)
            slope[k * length + 1 + j] = (slope[k * length + 1 + j] as number) + pull * (look[j] as number);
        }
      }
      step++;
      const [c1, c2] = [1 - 0.9 ** step, 1 - 0.999 ** step];
      for (let j = 0; j < weights.length; j++) {
        const g = (slope[j] as number) + RIDGE * (weights[j] as number);
        first[j] = 0.9 * (first[j] as number) + 0.1 * g;
        second[j] = 0.999 * (second[j] as number) + 0.001 * g * g;
        weights[j] =
          (weights[j] as number) -
          (rate * ((first[j] as number) / c1)) / (Math.sqrt((second[j] as number) / c2) + 1e-8);
      }
    }
    if (pass % 5 === 4)
      console.log(
        `pass ${pass + 1}: loss ${(loss / samples.length).toFixed(3)}, right ${((100 * right) / samples.length).toFixed(1)} %`,
      );
  }
  return weights;
}

const faces = facesOf(TRAINED_FACES);
const samples: Sample[] = [];
for (let i = 0; i < SEEDS.count; i++) samples.push(...samplesOf(SEEDS.first + i));
console.log(`${samples.length} windows`);
const weights = fitted(samples);
const rows = Array.from({ length: KINDS }, (_, kind) =>
  [...weights.subarray(kind * (LOOK_LENGTH + 1), (kind + 1) * (LOOK_LENGTH + 1))]
    .map((value) => String(Number(value.toFixed(2))))
    .join(', '),
);
writeFileSync(
  'src/vision/digit-weights.ts',
  `/** Weights of digit-odds.ts, fitted and written by tests/bench/assists-numerals-fit.ts: for each kind its own, then those of a look. */
export const DIGIT_WEIGHTS: readonly number[] = [\n  ${rows.join(',\n  ')},\n];\n`,
);
