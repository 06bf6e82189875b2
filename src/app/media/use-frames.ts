import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameSource } from '../../frames/frame-source.browser.ts';
import { media } from '../stores.ts';
import { reportUnlessAbort } from './report-unless-abort.ts';

/**
 * A source of its own for every place that shows pictures: in one source a newer request ends the older one.
 * Null while the file is opened, or where it is missing.
 */
export function useFrames(capture: Capture | null): Result<FrameSource, CaptureFailure> | null {
  const file = useStore(media, ({ files }) => (capture ? (files[capture.sha256] ?? null) : null));
  const [opened, setOpened] = useState<Result<FrameSource, CaptureFailure> | null>(null);
  useEffect(() => {
    if (!capture || !file) return;
    const control = new AbortController();
    const { signal } = control;
    let source: FrameSource | null = null;
    void import('../../frames/open-frames.browser.ts')
      .then(({ openFrames }) => openFrames(capture, file, signal))
      .then((result) => {
        if (result.ok) source = result.value;
        if (signal.aborted) source?.close();
        else setOpened(result);
      })
      .catch(reportUnlessAbort);
    return () => {
      control.abort();
      source?.close();
      setOpened(null);
    };
  }, [capture, file]);
  return opened;
}
