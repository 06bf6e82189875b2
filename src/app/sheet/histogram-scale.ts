/** How a histogram lies on its drawing. */
import type { Histogram, Interval } from '../../measurement/monte-carlo-summary.ts';

type Box = { readonly width: number; readonly top: number; readonly base: number };

/** Room to either side, as a share of what is drawn. */
const ROOM = 0.03;

/** From a value to its place: the histogram and the values given fill the width. */
export function histogramScale(
  { low, binWidth, counts }: Histogram,
  alsoSeen: readonly number[],
  width: number,
): (value: number) => number {
  const least = Math.min(low, ...alsoSeen);
  const most = Math.max(low + binWidth * counts.length, ...alsoSeen);
  const room = ROOM * (most - least);
  return (value) => ((value - least + room) / (most - least + 2 * room)) * width;
}

/** The outline of the bars as steps from the base and back; of the bars with their middle in an interval, where one is given. */
export function histogramPath(
  { low, binWidth, counts }: Histogram,
  at: (value: number) => number,
  { top, base }: Box,
  within: Interval | null,
): string {
  const highest = Math.max(1, ...counts);
  const bars = counts
    .map((count, i) => ({ left: low + i * binWidth, count }))
    .filter(({ left }) => {
      const middle = left + binWidth / 2;
      return !within || (middle >= within.low && middle <= within.high);
    });
  const [first, last] = [bars[0], bars.at(-1)];
  if (!first || !last) return '';
  const height = (count: number): string => (base - ((base - top) * count) / highest).toFixed(1);
  const steps = bars.map(({ left, count }) => `V${height(count)}H${at(left + binWidth).toFixed(1)}`);
  return `M${at(first.left).toFixed(1)} ${base}${steps.join('')}V${base}Z`;
}
