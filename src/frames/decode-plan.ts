/**
 * How to come to a frame of a clip, given what is decoded. A decoder only goes forward, and begins at a key frame, so going
 * back means going over the same frames again: then those before the wanted one are kept on the way. One that goes on to the
 * clip's end decodes some forty frames ahead and holds them, so it is begun only where somebody steps forward.
 */
export type DecodePlan =
  /** Take the running decoder on. */
  | { readonly kind: 'go-on' }
  /** Start one that gives the frame `from` first and `to` last; null: all to the clip's end. */
  | { readonly kind: 'start'; readonly from: number; readonly to: number | null };

/** Decoding so many frames costs less than starting a decoder. */
const WORTH_GOING_ON = 12;
/** So far at once goes who steps, or pulls slowly. */
const STEP = 3;

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
  if (goingBack) return { kind: 'start', from: Math.max(0, wanted - kept + 1), to: wanted };
  const steps = playhead !== null && wanted > playhead && wanted - playhead <= STEP;
  return { kind: 'start', from: wanted, to: steps ? null : wanted };
}

/** Pictures kept round the playhead. */
const KEPT_BYTES = 96 * 2 ** 20;

export function keptPictures(widthPx: number, heightPx: number): number {
  return Math.min(12, Math.max(4, Math.floor(KEPT_BYTES / (widthPx * heightPx * 4))));
}
