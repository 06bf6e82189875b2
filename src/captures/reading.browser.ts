/** One file being read: what is known of it while a reader or decoder works on it. */
import type { CaptureFailure, Damaged } from './capture-failure.ts';
import { TimeLimitError } from './time-limit.browser.ts';

export type Reading<T extends string = string> = {
  readonly blob: Blob;
  readonly mediaType: T;
  readonly signal: AbortSignal;
};

/**
 * What the world did, when a read or a decoder threw. `otherwise` says what any other throw means there; without it
 * any other throw is a mistake of ours and goes on, as an abort always does.
 */
export function failureOfReading(
  reason: unknown,
  { blob, mediaType, signal }: Reading,
  otherwise: Damaged['part'] | null,
): CaptureFailure {
  if (signal.aborted) throw signal.reason;
  if (reason instanceof TimeLimitError)
    return { code: 'captures/decoder-stalled', mediaType, limitS: reason.limitS };
  if (reason instanceof DOMException && ['NotReadableError', 'NotFoundError'].includes(reason.name))
    return { code: 'captures/not-readable', sizeBytes: blob.size };
  if (otherwise === null) throw reason;
  return { code: 'captures/damaged', mediaType, part: otherwise };
}
