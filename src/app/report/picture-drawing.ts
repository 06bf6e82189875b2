/** A picture of the brake with its marks and the stroke's dimension, as lines over it: they stay sharp at every print size. */
import { type Markup, markup } from '../../evidence/markup.ts';
import type { StrokeDrawing } from '../../measurement/measurement.ts';
import { textWidthGuessCss } from '../curve/phase-place.ts';
import type { CropRect } from '../viewer/crop-rect.ts';
import { alongLine, LINE_SORTS, type LineSort } from '../viewer/found-line.ts';
import { arrowsPath, linePath, linesPath } from '../viewer/line-path.ts';
import { crossOf } from '../viewer/MarkCross.tsx';
import { namePlaces } from '../viewer/name-places.ts';
import { strokeOnScreen } from '../viewer/stroke-on-screen.ts';
import { type FrameSize, type ScreenPoint, screenFromFrame, type View } from '../viewer/view-transform.ts';
import type { ViewerMark } from '../viewer/viewer-mark.ts';
import { REPORT } from '../words/report.ts';
import { nameOnPicture } from '../words/viewer.ts';

export type PictureDrawing = {
  /** Of what the crop cuts out; null where the picture is not at hand: the lines then stand on paper. */
  readonly href: string | null;
  readonly picture: FrameSize;
  readonly crop: CropRect;
  readonly marks: readonly ViewerMark[];
  readonly drawing: StrokeDrawing | null;
  readonly dimension: string | null;
  readonly label: string;
  /** As a file of its own: its size, and the typeface that it must carry. */
  readonly alone?: { readonly widthPx: number; readonly heightPx: number; readonly styles: string };
};

/** The drawing's own unit: on paper about a sixth of a millimetre. */
const WIDTH = 540;
const NAME = 17;
const VALUE = 22;
const DARK = '#14171a';
const LIGHT = '#ffffff';

export function pictureDrawing({
  href,
  picture,
  crop,
  marks,
  drawing,
  dimension,
  label,
  alone,
}: PictureDrawing): Markup {
  const scale = WIDTH / crop.widthPx;
  const height = Math.round(crop.heightPx * scale);
  const view: View = {
    frame: picture,
    screen: { widthCss: WIDTH, heightCss: height },
    scale,
    origin: { xCss: -crop.xPx * scale, yCss: -crop.yPx * scale },
  };
  const image = href
    ? markup`<image href="${href}" width="${WIDTH}" height="${height}" preserveAspectRatio="none"/>`
    : text(REPORT.notHere, { xCss: 12, yCss: height - 12 }, NAME);
  const size = alone
    ? markup` xmlns="http://www.w3.org/2000/svg" width="${alone.widthPx}" height="${alone.heightPx}"`
    : null;
  const styles = alone ? markup`<style>${alone.styles}</style>` : null;
  return markup`<svg class="annotated"${size} viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${label}" fill="none" font-family="Barlow Semi Condensed, Arial Narrow, sans-serif" font-weight="600" overflow="hidden">${styles}${image}${lines(view, marks, drawing, dimension)}</svg>`;
}

function lines(
  view: View,
  marks: readonly ViewerMark[],
  drawing: StrokeDrawing | null,
  dimension: string | null,
): Markup {
  const stroke =
    drawing && dimension
      ? strokeOnScreen(view, drawing, textWidthGuessCss(dimension, VALUE) + 6, marks)
      : null;
  const thin = linesPath(stroke?.thin ?? []);
  const axis = linesPath(stroke?.axis ?? []);
  const arrows = arrowsPath(stroke?.arrows ?? []);
  const named = marks.map((mark) => nameOf(view, mark));
  const places = namePlaces(
    named,
    { boxes: stroke ? [stroke.value] : [], lines: stroke ? [...stroke.axis, ...stroke.thin] : [] },
    view.screen,
  );
  const halo = (d: string) =>
    markup`<path d="${d}" stroke="${LIGHT}" stroke-width="4.5" stroke-opacity="0.85" stroke-linejoin="round"/>`;
  const names = marks.map((mark) => {
    const box = places.get(mark.id);
    return box ? text(nameOnPicture(mark), { xCss: box.leftCss, yCss: box.topCss + 16 }, NAME) : null;
  });
  return markup`${halo(axis + thin + arrows)}
<path d="${axis}" stroke="${DARK}" stroke-width="1.25" stroke-dasharray="22 4 3 4"/>
<path d="${thin}" stroke="${DARK}" stroke-width="1.5"/>
<path d="${arrows}" fill="${DARK}"/>
${LINE_SORTS.map((sort) => foundLine(view, marks, sort))}${marks.map((mark) => cross(view, mark))}${names}
${stroke && dimension ? text(dimension, { xCss: stroke.value.leftCss, yCss: stroke.value.topCss + 19 }, VALUE) : null}`;
}

function foundLine(view: View, marks: readonly ViewerMark[], sort: LineSort): Markup | null {
  const points = alongLine(marks, sort);
  if (points.length < 2) return null;
  const d = linePath(points.map((point) => screenFromFrame(view, point)));
  return markup`<path d="${d}" stroke="${DARK}" stroke-width="3" stroke-dasharray="7 4"/><path d="${d}" stroke="${LIGHT}" stroke-width="1.25" stroke-dasharray="7 4"/>`;
}

function nameOf(view: View, mark: ViewerMark) {
  return {
    id: mark.id,
    at: screenFromFrame(view, mark),
    widthCss: textWidthGuessCss(nameOnPicture(mark), NAME),
    heightCss: 21,
    reachCss: mark.minor ? 7 : 11,
    needed: mark.doubtful,
    silent: mark.minor && !mark.doubtful,
  };
}

function cross(view: View, mark: ViewerMark): Markup {
  const { xCss, yCss } = screenFromFrame(view, mark);
  const d = crossOf(mark);
  const doubt = mark.doubtful
    ? markup`<circle r="20" stroke="${LIGHT}" stroke-width="5"/><circle r="20" stroke="${DARK}" stroke-width="3" stroke-dasharray="7 5.5"/>`
    : null;
  const lines =
    d &&
    markup`<path d="${d}" stroke="${DARK}" stroke-width="5"/><path d="${d}" stroke="${LIGHT}" stroke-width="2"/>`;
  return markup`<g transform="translate(${xCss.toFixed(2)} ${yCss.toFixed(2)})">${doubt}${lines}</g>`;
}

/** The light edge first and whole, else that of one letter eats into the letter before. */
function text(content: string, { xCss, yCss }: ScreenPoint, size: number): Markup {
  const place = markup`x="${xCss.toFixed(1)}" y="${yCss.toFixed(1)}" font-size="${size}"`;
  return markup`<text ${place} fill="${LIGHT}" stroke="${LIGHT}" stroke-width="5" stroke-linejoin="round" aria-hidden="true">${content}</text><text ${place} fill="${DARK}">${content}</text>`;
}
