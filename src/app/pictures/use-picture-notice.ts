import { useEffect } from 'react';
import type { Capture } from '../../captures/capture.ts';
import type { PictureFailure } from '../media/picture-of.ts';
import { notices } from '../stores.ts';
import { pictureFailureText } from '../words/failures-pictures.ts';

/** Says why a picture of the record cannot be shown, until it can. */
export function usePictureNotice(capture: Capture | null, failure: PictureFailure | null): void {
  const fileName = capture?.fileName;
  useEffect(() => {
    if (fileName === undefined || failure === null) return;
    const topic = `picture ${fileName}`;
    notices.tell(topic, pictureFailureText(failure), fileName);
    return () => notices.clear(topic);
  }, [fileName, failure]);
}
