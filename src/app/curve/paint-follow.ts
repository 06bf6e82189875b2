/** The same lines on a canvas, for a clip that carries them: light and dark edges as viewer.css draws them over any picture. */
import { arrowsPath, linesPath } from '../viewer/line-path.ts';
import type { FrameSize, ScreenPoint, View } from '../viewer/view-transform.ts';
import { CROSSES, crossesPath } from './follow-crosses.ts';
import type { FollowLines } from './follow-lines.ts';
import { followStroke } from './follow-stroke.ts';

export const FACE = '"Barlow Semi Condensed", "Arial Narrow", sans-serif';
const ON_DARK = '#14171a';
const ON_LIGHT = '#ffffff';

/** The shorter side of the picture in units of the drawing: lines and letters as on a phone held before the eyes. */
const SHORT_SIDE_CSS = 540;

export type Context = OffscreenCanvasRenderingContext2D;

/** Picture pixels for one unit of the drawing. */
export function drawingScale({ widthPx, heightPx }: FrameSize): number {
  return Math.max(1, Math.min(widthPx, heightPx) / SHORT_SIDE_CSS);
}

export function paintFollow(
  context: Context,
  frame: FrameSize,
  lines: FollowLines,
  words: { readonly stroke: string | null; readonly unseen: readonly string[] },
): void {
  const scale = drawingScale(frame);
  const view: View = {
    frame,
    screen: { widthCss: frame.widthPx / scale, heightCss: frame.heightPx / scale },
    scale: 1 / scale,
    origin: { xCss: 0, yCss: 0 },
  };
  context.save();
  context.scale(scale, scale);
  context.lineJoin = 'round';
  paintCrosses(context, view, lines, 'still');
  if (words.stroke !== null) paintDimension(context, view, lines, words.stroke);
  paintCrosses(context, view, lines, 'moving');
  words.unseen.forEach((word, index) => {
    haloed(context, word, { xCss: 12, yCss: 28 + 26 * index }, 17);
  });
  context.restore();
}

function paintCrosses(context: Context, view: View, lines: FollowLines, of: keyof typeof CROSSES): void {
  const crosses = new Path2D(crossesPath(view, lines.crosses, of));
  stroked(context, crosses, ON_DARK, CROSSES[of].edgeCss);
  stroked(context, crosses, ON_LIGHT, CROSSES[of].coreCss);
}

function paintDimension(context: Context, view: View, lines: FollowLines, text: string): void {
  context.font = `600 22px ${FACE}`;
  const stroke = followStroke(view, lines, context.measureText(text).width);
  if (!stroke) return;
  const thin = new Path2D(linesPath(stroke.thin));
  const axis = new Path2D(linesPath(stroke.axis));
  const arrows = new Path2D(arrowsPath(stroke.arrows));
  for (const path of [axis, thin, arrows]) stroked(context, path, 'rgb(255 255 255 / 0.85)', 4.5);
  context.setLineDash([22, 4, 3, 4]);
  stroked(context, axis, ON_DARK, 1.25);
  context.setLineDash([]);
  stroked(context, thin, ON_DARK, 1.5);
  context.fillStyle = ON_DARK;
  context.fill(arrows);
  const { leftCss, topCss } = stroke.value;
  haloed(context, text, { xCss: leftCss, yCss: topCss + 19 }, 22);
}

function haloed(context: Context, text: string, { xCss, yCss }: ScreenPoint, sizeCss: number): void {
  context.font = `600 ${sizeCss}px ${FACE}`;
  context.strokeStyle = ON_LIGHT;
  context.lineWidth = 5;
  context.strokeText(text, xCss, yCss);
  context.fillStyle = ON_DARK;
  context.fillText(text, xCss, yCss);
}

function stroked(context: Context, path: Path2D, colour: string, width: number): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke(path);
}
