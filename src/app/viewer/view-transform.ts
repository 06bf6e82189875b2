/**
 * How the picture lies on the screen, and every way to move it there.
 *
 * Model    screen = origin + scale * frame: a similarity without rotation. Screen points are CSS pixels from the top left
 *          of the viewer, frame points are pixels of the upright picture.
 * Assumes  both sizes are larger than zero.
 * Fails    never: a wish out of reach is bent to the nearest allowed view. The least scale shows the whole picture, centred;
 *          from twice that scale on the middle of the screen may be anywhere over the picture, and in between the
 *          freedom grows evenly. So zooming in about any point of the picture keeps that point still.
 */
export type ScreenPoint = { readonly xCss: number; readonly yCss: number };
export type FramePoint = { readonly xPx: number; readonly yPx: number };
export type ScreenSize = { readonly widthCss: number; readonly heightCss: number };
export type FrameSize = { readonly widthPx: number; readonly heightPx: number };

export type View = {
  readonly frame: FrameSize;
  readonly screen: ScreenSize;
  /** CSS pixels per frame pixel. */
  readonly scale: number;
  /** Where the frame's (0, 0) lies on the screen. */
  readonly origin: ScreenPoint;
};

/** A frame pixel as large as a fingernail: beyond it there is nothing more to see. */
const MOST_SCALE = 32;

/** Share of the screen left free on each side of shown points. */
const ROOM_AROUND = 0.1;
/** What the magnification's buttons take of the foot: their height and line (viewer.css). */
export const FOOT_CSS = 57;

export function screenFromFrame(view: View, point: FramePoint): ScreenPoint {
  return {
    xCss: view.origin.xCss + view.scale * point.xPx,
    yCss: view.origin.yCss + view.scale * point.yPx,
  };
}

export function frameFromScreen(view: View, point: ScreenPoint): FramePoint {
  return {
    xPx: (point.xCss - view.origin.xCss) / view.scale,
    yPx: (point.yCss - view.origin.yCss) / view.scale,
  };
}

export function fittedView(frame: FrameSize, screen: ScreenSize): View {
  return inReach({ frame, screen, scale: leastScale(frame, screen), origin: { xCss: 0, yCss: 0 } });
}

/**
 * Shows the points above the buttons, as large as they go with room around them for names; the whole picture where there are none.
 * Nearer than twice the whole picture's scale a point may lie lower: the picture cannot be moved so far.
 */
export function viewOfPoints(frame: FrameSize, screen: ScreenSize, points: readonly FramePoint[]): View {
  const whole = fittedView(frame, screen);
  if (points.length < 2) return whole;
  const [xs, ys] = [points.map(({ xPx }) => xPx), points.map(({ yPx }) => yPx)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const room = (whole: number) => whole * (1 - 2 * ROOM_AROUND);
  const freeCss = screen.heightCss - FOOT_CSS;
  const scale = allowedScale(
    whole,
    Math.min(room(screen.widthCss) / Math.max(1, right - left), room(freeCss) / Math.max(1, bottom - top)),
  );
  const origin = {
    xCss: screen.widthCss / 2 - (scale * (left + right)) / 2,
    yCss: freeCss / 2 - (scale * (top + bottom)) / 2,
  };
  return inReach({ ...whole, scale, origin });
}

export function panned(view: View, dxCss: number, dyCss: number): View {
  return inReach(moved(view, dxCss, dyCss));
}

export function zoomedAbout(view: View, still: ScreenPoint, factor: number): View {
  return inReach(scaledAbout(view, still, factor));
}

/** Two fingers went from one pair of points to another: their middle carries the picture, their distance scales it. */
export function pinched(
  view: View,
  from: readonly [ScreenPoint, ScreenPoint],
  to: readonly [ScreenPoint, ScreenPoint],
): View {
  const before = middle(...from);
  const after = middle(...to);
  const factor = Math.max(1, distanceCss(...to)) / Math.max(1, distanceCss(...from));
  return inReach(
    moved(scaledAbout(view, before, factor), after.xCss - before.xCss, after.yCss - before.yCss),
  );
}

/** A fitted picture stays fitted; any other keeps its scale and what was in the middle. */
export function resized(view: View, screen: ScreenSize): View {
  if (isFitted(view)) return fittedView(view.frame, screen);
  const dxCss = (screen.widthCss - view.screen.widthCss) / 2;
  const dyCss = (screen.heightCss - view.screen.heightCss) / 2;
  return inReach({ ...moved(view, dxCss, dyCss), screen });
}

/** Brings a point that is off the screen, or nearly, to the middle. */
export function revealed(view: View, point: FramePoint, marginCss: number): View {
  const at = screenFromFrame(view, point);
  const { widthCss, heightCss } = view.screen;
  const seen =
    at.xCss >= marginCss &&
    at.yCss >= marginCss &&
    at.xCss <= widthCss - marginCss &&
    at.yCss <= heightCss - marginCss;
  return seen ? view : panned(view, widthCss / 2 - at.xCss, heightCss / 2 - at.yCss);
}

export function middleOfScreen(view: View): ScreenPoint {
  return { xCss: view.screen.widthCss / 2, yCss: view.screen.heightCss / 2 };
}

export function isFitted(view: View): boolean {
  return view.scale <= leastScale(view.frame, view.screen) * (1 + 1e-9);
}

export function isOnPicture(view: View, point: FramePoint): boolean {
  const { widthPx, heightPx } = view.frame;
  return point.xPx >= 0 && point.yPx >= 0 && point.xPx <= widthPx && point.yPx <= heightPx;
}

export function ontoPicture(view: View, point: FramePoint): FramePoint {
  const { widthPx, heightPx } = view.frame;
  return {
    xPx: Math.min(Math.max(point.xPx, 0), widthPx),
    yPx: Math.min(Math.max(point.yPx, 0), heightPx),
  };
}

export function distanceCss(a: ScreenPoint, b: ScreenPoint): number {
  return Math.hypot(a.xCss - b.xCss, a.yCss - b.yCss);
}

function middle(a: ScreenPoint, b: ScreenPoint): ScreenPoint {
  return { xCss: (a.xCss + b.xCss) / 2, yCss: (a.yCss + b.yCss) / 2 };
}

function leastScale(frame: FrameSize, screen: ScreenSize): number {
  return Math.min(screen.widthCss / frame.widthPx, screen.heightCss / frame.heightPx);
}

function moved(view: View, dxCss: number, dyCss: number): View {
  return { ...view, origin: { xCss: view.origin.xCss + dxCss, yCss: view.origin.yCss + dyCss } };
}

function scaledAbout(view: View, still: ScreenPoint, factor: number): View {
  const scale = allowedScale(view, view.scale * factor);
  const change = scale / view.scale;
  const origin = {
    xCss: still.xCss - change * (still.xCss - view.origin.xCss),
    yCss: still.yCss - change * (still.yCss - view.origin.yCss),
  };
  return { ...view, scale, origin };
}

function allowedScale(view: View, scale: number): number {
  const least = leastScale(view.frame, view.screen);
  return Math.min(Math.max(scale, least), Math.max(MOST_SCALE, least));
}

function inReach(view: View): View {
  const scale = allowedScale(view, view.scale);
  const freedom = Math.min(1, scale / leastScale(view.frame, view.screen) - 1);
  const xCss = reachableStart(
    view.origin.xCss,
    scale * view.frame.widthPx,
    view.screen.widthCss,
    Math.max(0, freedom),
  );
  const yCss = reachableStart(
    view.origin.yCss,
    scale * view.frame.heightPx,
    view.screen.heightCss,
    Math.max(0, freedom),
  );
  return { ...view, scale, origin: { xCss, yCss } };
}

function reachableStart(startCss: number, pictureCss: number, screenCss: number, freedom: number): number {
  const centred = (screenCss - pictureCss) / 2;
  const slack = (freedom * pictureCss) / 2;
  return Math.min(Math.max(startCss, centred - slack), centred + slack);
}
