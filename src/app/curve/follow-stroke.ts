/** The stroke so far on the screen, its value kept in sight: the dimension's own place for it may lie beyond the picture's edge. */
import { type StrokeOnScreen, strokeOnScreen } from '../viewer/stroke-on-screen.ts';
import type { View } from '../viewer/view-transform.ts';
import type { FollowLines } from './follow-lines.ts';

const MARGIN_CSS = 8;

export function followStroke(
  view: View,
  { drawing, crosses }: FollowLines,
  textWidthCss: number,
): StrokeOnScreen | null {
  if (!drawing) return null;
  const named = crosses.filter(({ kind }) => kind !== 'still');
  const stroke = strokeOnScreen(view, drawing, textWidthCss, named);
  const { leftCss, topCss, widthCss, heightCss } = stroke.value;
  const value = {
    ...stroke.value,
    leftCss: inside(leftCss, view.screen.widthCss - widthCss),
    topCss: inside(topCss, view.screen.heightCss - heightCss),
  };
  return { ...stroke, value };
}

function inside(start: number, most: number): number {
  return Math.max(MARGIN_CSS, Math.min(start, most - MARGIN_CSS));
}
