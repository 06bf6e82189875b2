import { useEffect } from 'react';
import type { Capture } from '../../captures/capture.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';
import { notices } from '../stores.ts';
import { pictureFailureText } from '../words/failures-pictures.ts';

/** Says why a picture of the record cannot be shown, until it can. */
export function usePictureNotice(
  capture: Capture | null,
  failure: CaptureFailure | FrameFailure | null,
): void {
  const fileName = capture?.fileName;
  useEffect(() => {
    if (fileName === undefined || failure === null) return;
    const topic = `picture ${fileName}`;
    notices.tell(topic, pictureFailureText(failure), fileName);
    return () => notices.clear(topic);
  }, [fileName, failure]);
}
