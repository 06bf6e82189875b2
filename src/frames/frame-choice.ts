/** Frames by time, over a clip's frames in the order of their time. */
import type { Frame } from './frame.ts';

/** The frame that stands on the screen at that time: the last one that has begun, before all of them the first. */
export function frameAtTime(frames: readonly Frame[], timeTicks: number): Frame | undefined {
  let low = 0;
  let high = frames.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((frames[middle]?.timeTicks ?? Number.POSITIVE_INFINITY) <= timeTicks) low = middle + 1;
    else high = middle;
  }
  return frames[Math.max(0, low - 1)];
}
