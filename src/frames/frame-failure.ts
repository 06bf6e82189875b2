/** Why an instant gives no picture. */
export type FrameFailure =
  /** The capture has no frame of that place and time. */
  | { readonly code: 'frames/no-such-frame'; readonly index: number; readonly timeTicks: number }
  | { readonly code: 'frames/not-decoded'; readonly index: number }
  | { readonly code: 'frames/decoder-stalled'; readonly index: number; readonly limitS: number }
  /** The file can no longer be read, or this device has no room for the picture. */
  | { readonly code: 'frames/not-readable'; readonly index: number };
