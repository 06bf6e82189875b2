/**
 * A straight edge of the push rod, sharp.
 *
 * Model    in each piece the place between pixels where the brightness changes most, by a parabola through three slopes; a line t = at + slope s
 *          through them, Tukey's biweight over their distance from it (biweight.ts)
 *          at s: variance = spread^2 (1 / n + (s - mean)^2 / sum (s - mean)^2), n and the sum over CORRELATED, as neighbours share light and dirt
 * Fails    null where fewer than LEAST_PLACES pieces show it
 */
import { biweight, spreadOf } from './biweight.ts';
import { type Line, placeOn, type Run } from './rod-lines.ts';
import { type RodStrip, riseAt } from './rod-strip.ts';

/** seen: share of the run's pieces that lie on it. */
export type EdgeFit = {
  readonly line: Line;
  readonly spreadPx: number;
  readonly seen: number;
  readonly varianceAt: (s: number) => number;
};

const REACHES_PX = [1.8, 1.3, 1.3, 1.3];
const LEAST_PLACES = 6;
const LEAST_SPREAD_PX = 0.1;
const CORRELATED = 2;

export function edgeFit(strip: RodStrip, start: Line, { first, last }: Run): EdgeFit | null {
  let line = start;
  let fit: EdgeFit | null = null;
  for (const reachPx of REACHES_PX) {
    const places = strip.pieces.slice(first, last + 1).flatMap(({ s, levels }) => {
      const t = edgeNear(levels, placeOn(line, s) + strip.roomPx, reachPx);
      return t === null ? [] : [{ s, t: t - strip.roomPx }];
    });
    fit = lineThrough(places, line, last - first + 1);
    if (!fit) return null;
    line = fit.line;
  }
  return fit;
}

/** The steepest place within reach; row: of the levels, from 0. */
function edgeNear(levels: Float64Array, row: number, reachPx: number): number | null {
  const rise = (i: number) => riseAt(levels, i);
  let best = -1;
  const [from, to] = [Math.ceil(row - reachPx), Math.floor(row + reachPx)];
  if (from < 2 || to > levels.length - 3) return null;
  for (let i = from; i <= to; i++)
    if (rise(i) >= rise(i - 1) && rise(i) > rise(i + 1) && (best < 0 || rise(i) > rise(best))) best = i;
  if (best < 0) return null;
  const [before, here, after] = [rise(best - 1), rise(best), rise(best + 1)];
  return best + (before - after) / (2 * (before - 2 * here + after));
}

function lineThrough(
  places: readonly { readonly s: number; readonly t: number }[],
  near: Line,
  pieces: number,
): EdgeFit | null {
  if (places.length < LEAST_PLACES) return null;
  let line = near;
  for (let round = 0; ; round++) {
    const residuals = places.map(({ s, t }) => t - placeOn(line, s));
    const spread = spreadOf(residuals, LEAST_SPREAD_PX);
    const weights = residuals.map((residual) => biweight(residual, spread));
    const n = sum(weights);
    if (n < LEAST_PLACES) return null;
    const mean = sum(weights.map((w, i) => w * (places[i]?.s ?? 0))) / n;
    const meanT = sum(weights.map((w, i) => w * (places[i]?.t ?? 0))) / n;
    const square = sum(weights.map((w, i) => w * ((places[i]?.s ?? 0) - mean) ** 2));
    const product = sum(
      weights.map((w, i) => w * ((places[i]?.s ?? 0) - mean) * ((places[i]?.t ?? 0) - meanT)),
    );
    const slope = product / square;
    line = { at: meanT - slope * mean, slope };
    if (round < 6) continue;
    const rms = Math.max(
      LEAST_SPREAD_PX,
      Math.sqrt(sum(weights.map((w, i) => w * (residuals[i] as number) ** 2)) / n),
    );
    return {
      line,
      spreadPx: rms,
      seen: n / pieces,
      varianceAt: (s) => CORRELATED * rms ** 2 * (1 / n + (s - mean) ** 2 / square),
    };
  }
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
