/** Where the pictures of an open capture come from. */
import type { Result } from '../basics/result.ts';
import type { Frame } from './frame.ts';
import type { FrameFailure } from './frame-failure.ts';

export type FrameSource = {
  /** In the order of their time; none for a photo. */
  readonly frames: readonly Frame[];
  /** By the browser's player, one by one: it does not decode this clip. */
  readonly played: boolean;
  /**
   * The upright picture of a frame, or of a photo with null. The caller owns the picture and closes it.
   * A newer request ends an older one. A request that is ended by that, by its signal or by closing the source
   * rejects with an AbortError (or the signal's own reason): see isAbort.
   */
  picture(frame: Frame | null, signal: AbortSignal): Promise<Result<ImageBitmap, FrameFailure>>;
  /** Frees what is kept; may be called again. */
  close(): void;
};

export function ended(why: string): DOMException {
  return new DOMException(why, 'AbortError');
}
