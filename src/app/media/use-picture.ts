import { useEffect, useState } from 'react';
import type { Result } from '../../basics/result.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { Frame } from '../../frames/frame.ts';
import type { FrameSource } from '../../frames/frame-source.browser.ts';
import type { PictureFailure } from './picture-of.ts';
import { reportUnlessAbort } from './report-unless-abort.ts';

export type ShownPicture = {
  /** The last picture stays until the next one is there. */
  readonly picture: ImageBitmap | null;
  readonly failure: PictureFailure | null;
};

const NOTHING: ShownPicture = { picture: null, failure: null };

export function usePicture(
  source: Result<FrameSource, CaptureFailure> | null,
  frame: Frame | null,
): ShownPicture {
  const [shown, setShown] = useState<ShownPicture>(NOTHING);

  useEffect(() => {
    if (!source?.ok) {
      setShown(source ? { picture: null, failure: source.failure } : NOTHING);
      return;
    }
    const control = new AbortController();
    source.value.picture(frame, control.signal).then((result) => {
      if (control.signal.aborted) {
        if (result.ok) result.value.close();
        return;
      }
      setShown(
        result.ok ? { picture: result.value, failure: null } : { picture: null, failure: result.failure },
      );
    }, reportUnlessAbort);
    return () => control.abort();
  }, [source, frame]);

  useEffect(() => () => shown.picture?.close(), [shown]);
  return shown;
}
