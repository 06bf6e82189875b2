/** Why no annotated clip was written. */
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';

export type AnnotateFailure =
  | { readonly code: 'annotated-clip/cannot-encode'; readonly widthPx: number; readonly heightPx: number }
  /** The encoder gave up on the way. */
  | { readonly code: 'annotated-clip/encoder-stopped'; readonly written: number; readonly frames: number }
  | { readonly code: 'annotated-clip/frames-missing'; readonly written: number; readonly frames: number }
  | CaptureFailure
  | FrameFailure;
