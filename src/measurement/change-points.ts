/**
 * Where a signal changes its course: cut into straight pieces.
 *
 * Model    y = a + b t in each piece, with a normal scatter; the cut with the least sum of squares over sigma^2 plus a price for each
 *          piece is found exactly: F(k) = min over j of F(j) + C(j, k) + price, and a j whose F(j) + C(j, k) is above F(k) is never looked
 *          at again. price = 3 ln n (level, slope and place of a piece, by the criterion of Schwarz).
 * Assumes  times ascending; scatter alike all along. Scatter that is alike from sample to sample makes more pieces than there are.
 * Fails    never; fewer than three samples are one piece
 * Source   optimal partitioning with pruning: Killick, Fearnhead, Eckley, J. Am. Stat. Assoc. 107 (2012) 1590; Schwarz, Ann. Stat. 6
 *          (1978) 461 (both from memory)
 */
import { middleOf } from '../basics/middle.ts';

export type Sample = { readonly t: number; readonly y: number };

/** Of samples from..to, both within: y = level + slope (t - t of from). */
export type Piece = {
  readonly from: number;
  readonly to: number;
  readonly level: number;
  readonly slope: number;
};

const LEAST_SAMPLES = 2;

export function straightPieces(samples: readonly Sample[], sigma: number): readonly Piece[] {
  const n = samples.length;
  if (n < 3) return n === 0 ? [] : [pieceOf(samples, 0, n)];
  const sums = sumsOf(samples, sigma);
  const price = 3 * Math.log(n);
  const best = new Float64Array(n + 1);
  const before = new Int32Array(n + 1);
  best[0] = -price;
  let open = [0];
  let beaten = new Set<number>();
  for (let k = LEAST_SAMPLES; k <= n; k++) {
    // A piece that begins here holds two samples by now.
    if (k >= 2 * LEAST_SAMPLES) open.push(k - LEAST_SAMPLES);
    let [least, from] = [Number.POSITIVE_INFINITY, 0];
    const costs = open.map((j) => {
      const cost = (best[j] as number) + costOf(sums, j, k);
      if (cost + price < least) [least, from] = [cost + price, j];
      return cost;
    });
    best[k] = least;
    before[k] = from;
    const beatenHere = new Set(open.filter((_j, i) => (costs[i] as number) > least));
    // What beat it can itself not be a cut one sample on.
    open = open.filter((j) => !beaten.has(j));
    beaten = beatenHere;
  }
  const pieces: Piece[] = [];
  for (let k = n; k > 0; k = before[k] as number) pieces.unshift(pieceOf(samples, before[k] as number, k));
  return pieces;
}

/**
 * Scatter of a signal that mostly runs straight: second differences of neighbours do not see its course.
 * sigma = 1.4826 median |y0 - 2 y1 + y2| / sqrt(6), for evenly spaced samples; 0 of fewer than three.
 */
export function scatterOf(samples: readonly Sample[]): number {
  const differences = samples
    .slice(2)
    .map(({ y }, i) => Math.abs(y - 2 * (samples[i + 1] as Sample).y + (samples[i] as Sample).y));
  return (1.4826 * (middleOf(differences) ?? 0)) / Math.sqrt(6);
}

type Sums = { readonly [name in 't' | 'y' | 'tt' | 'ty' | 'yy']: Float64Array };

/** Running sums, so that the cost of any piece takes a few steps. */
function sumsOf(samples: readonly Sample[], sigma: number): Sums {
  const n = samples.length;
  const [t0, y0] = [(samples[0] as Sample).t, (samples[0] as Sample).y];
  const room = () => new Float64Array(n + 1);
  const sums = { t: room(), y: room(), tt: room(), ty: room(), yy: room() };
  for (const [i, sample] of samples.entries()) {
    const [t, y] = [sample.t - t0, (sample.y - y0) / sigma];
    sums.t[i + 1] = (sums.t[i] as number) + t;
    sums.y[i + 1] = (sums.y[i] as number) + y;
    sums.tt[i + 1] = (sums.tt[i] as number) + t * t;
    sums.ty[i + 1] = (sums.ty[i] as number) + t * y;
    sums.yy[i + 1] = (sums.yy[i] as number) + y * y;
  }
  return sums;
}

/** Least sum of squares of samples j to before k about a straight line. */
function costOf({ t, y, tt, ty, yy }: Sums, j: number, k: number): number {
  const of = (sum: Float64Array) => (sum[k] as number) - (sum[j] as number);
  const n = k - j;
  const [mt, my] = [of(t) / n, of(y) / n];
  const stt = of(tt) - n * mt * mt;
  const sty = of(ty) - n * mt * my;
  const syy = of(yy) - n * my * my;
  return Math.max(0, syy - (stt > 0 ? (sty * sty) / stt : 0));
}

function pieceOf(samples: readonly Sample[], j: number, k: number): Piece {
  const part = samples.slice(j, k);
  const t0 = (part[0] as Sample).t;
  const mt = part.reduce((sum, { t }) => sum + t - t0, 0) / part.length;
  const my = part.reduce((sum, { y }) => sum + y, 0) / part.length;
  const stt = part.reduce((sum, { t }) => sum + (t - t0 - mt) ** 2, 0);
  const sty = part.reduce((sum, { t, y }) => sum + (t - t0 - mt) * (y - my), 0);
  const slope = stt > 0 ? sty / stt : 0;
  return { from: j, to: k - 1, level: my - slope * mt, slope };
}
