/**
 * How far the colours of a stretch lie from those of the push rod past it, and how streaky each is.
 *
 * Model    apart: ln(1 + d' C^-1 d), d the difference of the mean colours (u, v, ln red), C the mean of both covariances, with NOISE on its
 *          diagonal
 *          streaky: along each line of the rod the median distance of ln red from its median; the mean of the lines
 * Source   Mahalanobis distance: any book on multivariate statistics (from memory)
 */
import type { Colour } from './paint-colour-edge.ts';
import { meanOf, median } from './paint-numbers.ts';

const NOISE = 0.003;
const FEW = 8;

export function colourApart(ones: readonly Colour[], others: readonly Colour[]): number {
  if (ones.length < FEW || others.length < FEW) return 0;
  const [a, b] = [meanColour(ones), meanColour(others)];
  const d: Colour = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  const [x, y] = [covariance(ones, a), covariance(others, b)];
  const pooled = x.map((line, i) =>
    line.map((value, j) => (value + (y[i]?.[j] as number)) / 2 + (i === j ? NOISE : 0)),
  ) as unknown as Matrix;
  return Math.log(1 + dot(d, solved(pooled, d)));
}

/** lines: ln red along each line of the rod. */
export const streakyOf = (lines: readonly (readonly number[])[]): number =>
  meanOf(
    lines.map((line) => {
      const middle = median(line);
      return median(line.map((value) => Math.abs(value - middle)));
    }),
  );

type Matrix = readonly [Colour, Colour, Colour];

const meanColour = (of: readonly Colour[]): Colour => [
  meanOf(of.map(([u]) => u)),
  meanOf(of.map(([, v]) => v)),
  meanOf(of.map(([, , red]) => red)),
];

const covariance = (of: readonly Colour[], mean: Colour): Matrix =>
  [0, 1, 2].map((i) =>
    [0, 1, 2].map(
      (j) =>
        of.reduce(
          (sum, c) =>
            sum + ((c[i] as number) - (mean[i] as number)) * ((c[j] as number) - (mean[j] as number)),
          0,
        ) / of.length,
    ),
  ) as unknown as Matrix;

const dot = (a: Colour, b: Colour) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Colour, b: Colour): Colour => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** By Cramer's rule; the matrix is its own transpose. */
function solved([a, b, c]: Matrix, right: Colour): Colour {
  const whole = dot(a, cross(b, c));
  return [dot(right, cross(b, c)) / whole, dot(a, cross(right, c)) / whole, dot(a, cross(b, right)) / whole];
}
