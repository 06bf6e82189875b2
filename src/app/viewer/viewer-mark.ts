/** A mark as the viewer shows it. The shell makes it from the view's mark, the fit and the selection. */
import type { LineSort } from './found-line.ts';
import type { FramePoint } from './view-transform.ts';

export type ViewerMark = FramePoint & {
  readonly id: string;
  /** In words, as it stands beside the cross. */
  readonly name: string;
  readonly selected: boolean;
  readonly automatic: boolean;
  readonly doubtful: boolean;
  /** Of the kind that a tap places now. */
  readonly asked?: boolean;
  /** One of many alike: drawn smaller, and named only when it is selected or doubtful. */
  readonly minor: boolean;
  /** The found line on which it lies, drawn as a line: no cross of its own then. */
  readonly line?: LineSort | null;
  /** Drawn as a ring of so many pixels of the picture. */
  readonly ringPx?: number;
};
