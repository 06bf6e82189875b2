/** A place that was found and waits to be taken: drawn, never touched. */
import type { LineSort } from './found-line.ts';
import type { FramePoint } from './view-transform.ts';

export type OfferedMark = FramePoint & {
  readonly id: string;
  /** Null: one of many alike. */
  readonly name: string | null;
  /** The line on which it lies, drawn as a line: no cross of its own then. */
  readonly line: LineSort | null;
  /** Somewhere within so many pixels of the picture: drawn as a ring. */
  readonly ringPx?: number;
  /** On an edge: drawn as that, from end to end. */
  readonly edge?: readonly FramePoint[];
};
