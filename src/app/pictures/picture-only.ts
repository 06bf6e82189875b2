import type { FrameViewerProps } from '../viewer/viewer-props.ts';

/** A picture to look at: nothing on it, and a tap does nothing. */
export const PICTURE_ONLY = {
  marks: [],
  firstShown: [],
  drawing: null,
  dimensionText: null,
  placing: null,
  onPlace: ignore,
  onMoveBegin: ignore,
  onMove: ignore,
  onMoveEnd: ignore,
  onSelect: ignore,
  onDelete: ignore,
} satisfies Partial<FrameViewerProps>;

function ignore(): void {}
