/**
 * Where the loupe stands and how much it enlarges.
 *
 * Model    A square beside the finger: above it, to its left, to its right, below, or in a corner of the viewer; each place
 *          slid back onto the screen. Best is a place that covers neither finger nor mark; then one that covers the mark
 *          only; among equals the side it was on before, so that it does not hop.
 * Assumes  the viewer is larger than the loupe; from about 300 CSS pixels each way a corner is always free of the finger.
 */
import type { Hand } from '../../marks/placement.ts';
import type { ScreenPoint, ScreenSize } from './view-transform.ts';

export type LoupeSide =
  | 'above'
  | 'left'
  | 'right'
  | 'below'
  | 'top-left'
  | 'top-right'
  | 'bottom-left'
  | 'bottom-right';
export type LoupePlace = { readonly side: LoupeSide; readonly leftCss: number; readonly topCss: number };

export const LOUPE_CSS = 136;
const EDGE_CSS = 8;
const MARK_CLEAR_CSS = 18;
/** Half of a gloved fingertip on the glass, or the arrow of a mouse. */
const CLEAR_CSS = { finger: 44, mouse: 26, keys: 26 } as const;
const PICTURE_TIMES = 4;
const LEAST_SCALE = 1;
const MOST_SCALE = 12;

/** CSS pixels per frame pixel inside the loupe; null where none is shown. */
export function loupeScale(hand: Hand, pictureScale: number): number | null {
  if (hand !== 'finger' && pictureScale >= 1) return null;
  return Math.max(pictureScale, Math.min(MOST_SCALE, Math.max(LEAST_SCALE, PICTURE_TIMES * pictureScale)));
}

export function loupePlace(
  hand: Hand,
  points: { readonly finger: ScreenPoint; readonly mark: ScreenPoint },
  screen: ScreenSize,
  before: LoupeSide | null,
): LoupePlace {
  const clearCss = CLEAR_CSS[hand];
  const ranked = places(points.finger, clearCss, screen).map((place, order) => {
    const onFinger = covers(place, points.finger, clearCss - 0.5) ? 4 : 0;
    const onMark = covers(place, points.mark, MARK_CLEAR_CSS) ? 2 : 0;
    const hop = place.side === before ? 0 : 1;
    return { place, cost: onFinger + onMark + hop + order / 100 };
  });
  return ranked.reduce((best, next) => (next.cost < best.cost ? next : best)).place;
}

function places(
  finger: ScreenPoint,
  clearCss: number,
  screen: ScreenSize,
): readonly [LoupePlace, ...LoupePlace[]] {
  const right = screen.widthCss - LOUPE_CSS - EDGE_CSS;
  const bottom = screen.heightCss - LOUPE_CSS - EDGE_CSS;
  const left = finger.xCss - LOUPE_CSS / 2;
  const top = finger.yCss - LOUPE_CSS / 2;
  const onScreen = (side: LoupeSide, leftCss: number, topCss: number): LoupePlace => ({
    side,
    leftCss: Math.max(EDGE_CSS, Math.min(right, leftCss)),
    topCss: Math.max(EDGE_CSS, Math.min(bottom, topCss)),
  });
  return [
    onScreen('above', left, finger.yCss - clearCss - LOUPE_CSS),
    onScreen('left', finger.xCss - clearCss - LOUPE_CSS, top),
    onScreen('right', finger.xCss + clearCss, top),
    onScreen('below', left, finger.yCss + clearCss),
    onScreen('top-left', EDGE_CSS, EDGE_CSS),
    onScreen('top-right', right, EDGE_CSS),
    onScreen('bottom-left', EDGE_CSS, bottom),
    onScreen('bottom-right', right, bottom),
  ];
}

function covers(place: LoupePlace, point: ScreenPoint, clearCss: number): boolean {
  const dxCss = Math.max(place.leftCss - point.xCss, 0, point.xCss - place.leftCss - LOUPE_CSS);
  const dyCss = Math.max(place.topCss - point.yCss, 0, point.yCss - place.topCss - LOUPE_CSS);
  return Math.hypot(dxCss, dyCss) < clearCss;
}
