/**
 * How to come to a frame of a clip, given what is decoded. A decoder only goes forward, and begins at a key frame, so going
 * back means going over the same frames again: then those before the wanted one are kept on the way.
 */
export type DecodePlan =
  /** Take the running decoder on. */
  | { readonly kind: 'go-on' }
  /** Start one that gives the frame `from` first. */
  | { readonly kind: 'start'; readonly from: number };

/** Decoding so many frames costs less than starting a decoder. */
const WORTH_GOING_ON = 12;

export function decodePlan(
  wanted: number,
  state: {
    /** The frame that the running decoder gives next; null when none runs. */
    readonly next: number | null;
    /** The frame given last. */
    readonly playhead: number | null;
    readonly kept: number;
    /** Key frames in rising order. */
    readonly keys: readonly number[];
  },
): DecodePlan {
  const { next, playhead, kept, keys } = state;
  if (next !== null && next <= wanted) {
    const shortcut = wanted - next > WORTH_GOING_ON && keys.some((key) => key > next && key <= wanted);
    if (!shortcut) return { kind: 'go-on' };
  }
  const goingBack = playhead !== null && wanted < playhead && playhead - wanted <= kept;
  return { kind: 'start', from: goingBack ? Math.max(0, wanted - kept + 1) : wanted };
}

/** Pictures kept round the playhead. */
const KEPT_BYTES = 96 * 2 ** 20;

export function keptPictures(widthPx: number, heightPx: number): number {
  return Math.min(12, Math.max(4, Math.floor(KEPT_BYTES / (widthPx * heightPx * 4))));
}
