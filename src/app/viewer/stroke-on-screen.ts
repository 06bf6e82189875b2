/** The stroke's drawing carried to the screen: axis, extension lines and dimension, all clear of the marks. */
import type { PicturePoint, StrokeDrawing } from '../../measurement/measurement.ts';
import type { Box } from './box.ts';
import { dimensionLines, type Triangle } from './dimension-lines.ts';
import { outsideDiscs, type Segment } from './segment.ts';
import { type FramePoint, type ScreenPoint, screenFromFrame, type View } from './view-transform.ts';

export type StrokeOnScreen = {
  readonly axis: readonly Segment[];
  readonly thin: readonly Segment[];
  readonly arrows: readonly [Triangle, Triangle];
  readonly value: Box;
};

const TEXT_HEIGHT_CSS = 24;
/** A mark's arms, and the gap that a drawing leaves between a feature and its extension line. */
const CLEAR_CSS = 18;

export function strokeOnScreen(
  view: View,
  drawing: StrokeDrawing,
  textWidthCss: number,
  marks: readonly FramePoint[],
): StrokeOnScreen {
  const carried = ([from, to]: readonly [PicturePoint, PicturePoint]): Segment => [
    screenFromPicture(view, from),
    screenFromPicture(view, to),
  ];
  const centres = marks.map((mark) => screenFromFrame(view, mark));
  const clear = (segment: Segment) => outsideDiscs(segment, centres, CLEAR_CSS);
  const text = { widthCss: textWidthCss, heightCss: TEXT_HEIGHT_CSS };
  const { shafts, arrows, value } = dimensionLines(carried(drawing.dimension), text, view.screen, centres);
  return {
    axis: clear(carried(drawing.axis)),
    thin: [...drawing.extensions.flatMap((extension) => clear(carried(extension))), ...shafts],
    arrows,
    value,
  };
}

function screenFromPicture(view: View, [xPx, yPx]: PicturePoint): ScreenPoint {
  return screenFromFrame(view, { xPx, yPx });
}
