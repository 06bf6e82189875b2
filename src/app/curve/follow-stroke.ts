/** The stroke so far on the screen, its value kept in sight: the dimension's own place for it may lie beyond the picture's edge. */
import type { PicturePoint, StrokeDrawing } from '../../measurement/measurement.ts';
import { type StrokeOnScreen, strokeOnScreen } from '../viewer/stroke-on-screen.ts';
import { screenFromFrame, type View } from '../viewer/view-transform.ts';
import type { FollowLines } from './follow-lines.ts';

const MARGIN_CSS = 8;
const ASIDE_CSS = 8;

export function followStroke(
  view: View,
  { drawing, crosses }: FollowLines,
  textWidthCss: number,
): StrokeOnScreen | null {
  if (!drawing) return null;
  const named = crosses.filter(({ kind }) => kind !== 'still');
  const stroke = strokeOnScreen(view, drawing, textWidthCss, named);
  const { leftCss, topCss, widthCss, heightCss } = stroke.value;
  const sightCss = inside(leftCss, view.screen.widthCss - widthCss);
  // Moved along, it would stand on the arrows: then it stands beyond the line, seen from the rod.
  const asideCss = sightCss === leftCss ? 0 : awayFromRod(view, drawing) * (heightCss + ASIDE_CSS);
  const value = {
    ...stroke.value,
    leftCss: sightCss,
    topCss: inside(topCss + asideCss, view.screen.heightCss - heightCss),
  };
  return { ...stroke, value };
}

function awayFromRod(view: View, { axis, dimension }: StrokeDrawing): 1 | -1 {
  const yCss = ([xPx, yPx]: PicturePoint) => screenFromFrame(view, { xPx, yPx }).yCss;
  return yCss(dimension[0]) < yCss(axis[0]) ? -1 : 1;
}

function inside(start: number, most: number): number {
  return Math.max(MARGIN_CSS, Math.min(start, most - MARGIN_CSS));
}
