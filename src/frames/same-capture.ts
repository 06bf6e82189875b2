/** Marks lie on the pictures of one file. Another file, or a record that was changed by hand, is told here. */
import type { Capture } from '../captures/capture.ts';
import type { CaptureFailure } from '../captures/capture-failure.ts';

type Found = Pick<Capture, 'kind' | 'widthPx' | 'heightPx'> & {
  readonly clip: { readonly ticksPerSecond: number; readonly frameCount: number } | null;
};

/** Null where the file found is as recorded. */
export function differenceFromRecord(recorded: Capture, found: Found): CaptureFailure | null {
  const facts = [
    ['kind', recorded.kind, found.kind],
    ['width', recorded.widthPx, found.widthPx],
    ['height', recorded.heightPx, found.heightPx],
    ['clock', recorded.clip?.ticksPerSecond ?? 0, found.clip?.ticksPerSecond ?? 0],
    ['frame-count', recorded.clip?.frameCount ?? 0, found.clip?.frameCount ?? 0],
  ] as const;
  const differs = facts.find(([, was, is]) => was !== is);
  if (!differs) return null;
  const [fact, was, is] = differs;
  return { code: 'captures/not-the-recorded-file', fact, recorded: was, found: is };
}
