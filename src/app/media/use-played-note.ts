import { useEffect } from 'react';
import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameSource } from '../../frames/frame-source.browser.ts';
import { work } from '../stores.ts';

/** Where frames are chosen or marked: a clip that came in decoded may be shown by this browser's player. */
export function usePlayedNote(
  capture: Capture | null,
  source: Result<FrameSource, CaptureFailure> | null,
): void {
  const played = source?.ok && source.value.played ? (capture?.id ?? null) : null;
  useEffect(() => {
    if (played !== null) work.notePlayed(played);
  }, [played]);
}
