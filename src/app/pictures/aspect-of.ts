/** Width over height of the upright picture, for the style sheet. */
import type { CSSProperties } from 'react';
import type { Capture } from '../../captures/capture.ts';

export const aspectOf = ({ widthPx, heightPx }: Capture): CSSProperties & Record<'--aspect', number> => ({
  '--aspect': widthPx / heightPx,
});
