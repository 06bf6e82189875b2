/** Which frame a place on the chart or a key means. Frames are counted from the track's first. */
import type { CurvePoint } from '../../measurement/clip-measurement.ts';

/** The frame nearest in time: a clip's frames need not be evenly spaced. */
export function nearestFrame(curve: readonly CurvePoint[], timeS: number): number {
  let low = 0;
  let high = curve.length - 1;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const [before, after] = [curve[middle]?.timeS ?? 0, curve[middle + 1]?.timeS ?? 0];
    if (timeS - before <= after - timeS) high = middle;
    else low = middle + 1;
  }
  return Math.max(0, low);
}

const LEAP = 10;

/** Null where the key means nothing here. */
export function frameByKey(
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
  frame: number,
  frames: number,
): number | null {
  const wanted = wantedFrame(key, shiftKey ? LEAP : 1, frame, frames);
  return wanted === null ? null : Math.min(frames - 1, Math.max(0, wanted));
}

function wantedFrame(key: string, step: number, frame: number, frames: number): number | null {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return frame + step;
    case 'ArrowLeft':
    case 'ArrowDown':
      return frame - step;
    case 'PageUp':
      return frame + LEAP;
    case 'PageDown':
      return frame - LEAP;
    case 'Home':
      return 0;
    case 'End':
      return frames - 1;
    default:
      return null;
  }
}
