/** Why a file does not become a capture: a code and the facts that explain it; app/words makes the sentence. */

export type CaptureFailure =
  | { readonly code: 'captures/empty-file' }
  /** The browser was refused the bytes: the file was moved, changed, or lies in a cloud that is out of reach. */
  | { readonly code: 'captures/not-readable'; readonly sizeBytes: number }
  | NotAPicture
  | Damaged
  | { readonly code: 'captures/codec-not-decoded'; readonly codec: string; readonly mediaType: string }
  | { readonly code: 'captures/no-video-track'; readonly mediaType: string }
  | {
      readonly code: 'captures/too-many-pixels';
      readonly widthPx: number;
      readonly heightPx: number;
      readonly limitPx: number;
    }
  /** This device cannot turn a picture of that size. */
  | { readonly code: 'captures/not-drawn'; readonly widthPx: number; readonly heightPx: number }
  | { readonly code: 'captures/photo-too-big'; readonly sizeBytes: number; readonly limitBytes: number }
  | { readonly code: 'captures/decoder-stalled'; readonly mediaType: string; readonly limitS: number }
  /** The file opens, but is not the one that the record speaks of. */
  | {
      readonly code: 'captures/not-the-recorded-file';
      readonly fact: 'kind' | 'width' | 'height' | 'frame-count' | 'clock';
      readonly recorded: number | string;
      readonly found: number | string;
    };

export type NotAPicture = {
  readonly code: 'captures/not-a-picture';
  /** Hexadecimal, at most 16 bytes. */
  readonly firstBytes: string;
  /** What the file calls itself inside, where it says so. */
  readonly brand: string | null;
};

export type Damaged = {
  readonly code: 'captures/damaged';
  readonly mediaType: string;
  /** Which part does not hold: the description of what is inside, the end of the file, or the picture itself. */
  readonly part: 'index' | 'end' | 'picture';
};
