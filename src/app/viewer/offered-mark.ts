/** A place that was found and waits to be taken: drawn, never touched. */
import type { FramePoint } from './view-transform.ts';

export type OfferedMark = FramePoint & {
  readonly id: string;
  /** Null: one of many alike. */
  readonly name: string | null;
  readonly minor: boolean;
};
