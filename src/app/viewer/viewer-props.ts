import type { ReactNode } from 'react';
import type { PlacedPoint } from '../../marks/placement.ts';
import type { StrokeDrawing } from '../../measurement/measurement.ts';
import type { CropRect } from './crop-rect.ts';
import type { Mode } from './gesture-act.ts';
import type { OfferedMark } from './offered-mark.ts';
import type { FramePoint } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import type { ViewerStore } from './viewer-store.ts';

/** Points are in pixels of the upright picture, (0, 0) at the top left corner of its first pixel. */
export type FrameViewerProps = {
  readonly picture: ImageBitmap | null;
  readonly pictureLabel: string;
  /** In place of a picture that will not come. */
  readonly whyNone?: string | null;
  readonly marks: readonly ViewerMark[];
  /** Found, and not marks yet. */
  readonly offered?: readonly OfferedMark[];
  /** What the first view shows; the whole picture where there are fewer than two points. */
  readonly firstShown: readonly FramePoint[];
  /** What a view that is there already is to show from now on; null until somebody asks. */
  readonly close?: readonly FramePoint[] | null;
  readonly drawing: StrokeDrawing | null;
  /** The stroke as text, with its unit. */
  readonly dimensionText: string | null;
  /** Name of the mark that a tap places now; null where taps only select. */
  readonly placing: string | null;
  readonly onPlace: (point: PlacedPoint) => void;
  /** One undo step from begin to end. */
  readonly onMoveBegin: (id: string) => void;
  readonly onMove: (id: string, point: PlacedPoint) => void;
  readonly onMoveEnd: (id: string) => void;
  /** In place of the end: the hand meant something else, the mark goes back with the uncertainty it had. Without it the move ends. */
  readonly onMoveCancel?: (id: string) => void;
  readonly onSelect: (id: string | null) => void;
  readonly onDelete: (id: string) => void;
  /** Drawn over the picture by somebody else, in the viewer's own view; not touched. */
  readonly over?: ((store: ViewerStore) => ReactNode) | null;
  /** While it is there, a drag draws the rectangle to cut out. */
  readonly cropMode?: {
    readonly rect: CropRect | null;
    readonly onCrop: (rect: CropRect) => void;
  } | null;
};

export function modeOf(props: FrameViewerProps): Mode {
  if (props.cropMode) return 'crop';
  return props.placing === null ? 'look' : 'place';
}
