/**
 * A clip's clock: the presentation times of its packets, and nothing else.
 *
 * Model    ticks = round(seconds * ticksPerSecond); frames in the order of their ticks
 * Assumes  ticksPerSecond is the track's own resolution, so that the product is a whole number but for rounding.
 * Fails    never: a packet before time 0 lies before the cut of an edited clip and no player shows it, and of two packets
 *          of one tick only the first can be told by its time; both are left out.
 */
export type Packet = {
  readonly timestampS: number;
  readonly durationS: number;
  readonly isKey: boolean;
};

export type ClipTime = {
  readonly timeTicks: number;
  /** As the reader gave it: asking for a frame by ticks / ticksPerSecond could miss by a last digit. */
  readonly timestampS: number;
  /** The frame decodes without another. */
  readonly isKey: boolean;
};

export type ClipTimes = {
  readonly times: readonly ClipTime[];
  /** From the first frame shown to the end of the last. */
  readonly durationS: number;
};

export function clipTimes(packets: readonly Packet[], ticksPerSecond: number): ClipTimes {
  const shown = packets
    .filter(({ timestampS }) => timestampS >= 0)
    .toSorted((a, b) => a.timestampS - b.timestampS);
  const times: ClipTime[] = [];
  let endS = 0;
  for (const { timestampS, durationS, isKey } of shown) {
    const timeTicks = Math.round(timestampS * ticksPerSecond);
    endS = Math.max(endS, timestampS + durationS);
    if (timeTicks !== times.at(-1)?.timeTicks) times.push({ timeTicks, timestampS, isKey });
  }
  return { times, durationS: Math.max(0, endS - (times[0]?.timestampS ?? 0)) };
}
