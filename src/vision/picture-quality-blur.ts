/**
 * The blur of a picture from the widths of its edges: how much all of it has, how much more it was smeared, and which way.
 *
 * Model    squared width of the sharpest edges that face the way n: n' S n, S symmetric; its roots are the blur across and along the
 *          smear. Ways in BINS of half a turn; least squares over those with edges enough, a root of their number as weight
 * Assumes  blur alike over the part looked at; edges that face at least four ways, else only one width is told
 * Fails    null with too few edges
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import { quantile } from './paint-numbers.ts';
import type { SeenEdge } from './picture-quality-edges.ts';

export type Blur = {
  /** Standard deviation of the blur, px, the way it is least, and the way it is most. */
  readonly leastPx: number;
  readonly mostPx: number;
  /** The way it is most, from x, 0 to pi; null where edges face too few ways to tell. */
  readonly alongRad: number | null;
  readonly edges: number;
};

const BINS = 8;
const LEAST_EDGES = 12;
const LEAST_IN_BIN = 5;
const LEAST_BINS = 4;
/** The sharpest of all are made so by noise, the softest are soft in themselves. */
const SHARPEST = 0.4;

export function blurOf(edges: readonly SeenEdge[]): Blur | null {
  if (edges.length < LEAST_EDGES) return null;
  const bins = Array.from({ length: BINS }, (_, bin) => {
    const those = edges.filter(({ facesRad }) => Math.round((facesRad / Math.PI) * BINS) % BINS === bin);
    return { facesRad: (bin * Math.PI) / BINS, widths: those.map(({ widthPx }) => widthPx) };
  }).filter(({ widths }) => widths.length >= LEAST_IN_BIN);
  if (bins.length < LEAST_BINS) {
    const widthPx = quantile(
      edges.map((edge) => edge.widthPx),
      SHARPEST,
    );
    return { leastPx: widthPx, mostPx: widthPx, alongRad: null, edges: edges.length };
  }
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  for (const { facesRad, widths } of bins) {
    const squared = quantile(widths, SHARPEST) ** 2;
    // Of a variance the scatter grows with it.
    const weight = Math.sqrt(widths.length) / Math.max(0.2, squared) ** 2;
    const row = [1, Math.cos(2 * facesRad), Math.sin(2 * facesRad)];
    for (let j = 0; j < 3; j++) {
      right[j] = (right[j] as number) + weight * (row[j] as number) * squared;
      for (let k = 0; k < 3; k++)
        normal[3 * j + k] = (normal[3 * j + k] as number) + weight * (row[j] as number) * (row[k] as number);
    }
  }
  const lower = choleskyFactor(normal, 3);
  if (!lower) return null;
  const [mean, cosine, sine] = choleskySolve(lower, 3, right) as unknown as [number, number, number];
  const half = Math.hypot(cosine, sine);
  const alongRad = (Math.atan2(sine, cosine) / 2 + Math.PI) % Math.PI;
  return {
    leastPx: Math.sqrt(Math.max(0.04, mean - half)),
    mostPx: Math.sqrt(Math.max(0.04, mean + half)),
    alongRad,
    edges: edges.length,
  };
}
