/**
 * The stroke as a drafting dimension, in screen pixels, so that it keeps its line widths and arrowheads at every zoom.
 *
 * Model    Arrowheads 3 : 1, tips on the extension lines. The value stands upright in a break at the middle of the
 *          dimension line. Where arrowheads and value do not fit between the extension lines, the arrowheads stand
 *          outside pointing in, and the value beyond the end that has room on the screen.
 * Fails    a dimension of no length has no direction: it is drawn as if it ran to the right.
 * Source   practice of ISO 129-1 (arrowheads outside, interrupted line with upright value; from memory).
 */
import type { Box } from './box.ts';
import type { Segment } from './segment.ts';
import type { ScreenPoint, ScreenSize } from './view-transform.ts';

export type Triangle = readonly [tip: ScreenPoint, left: ScreenPoint, right: ScreenPoint];

export type DimensionLines = {
  readonly shafts: readonly Segment[];
  readonly arrows: readonly [Triangle, Triangle];
  /** Around the value, whose middle is its middle. */
  readonly value: Box;
};

const ARROW_CSS = 15;
const TAIL_CSS = 14;
const CLEAR_CSS = 5;

export function dimensionLines(
  ends: Segment,
  text: { readonly widthCss: number; readonly heightCss: number },
  screen: ScreenSize,
): DimensionLines {
  const [from, to] = ends;
  const lengthCss = Math.hypot(to.xCss - from.xCss, to.yCss - from.yCss);
  const along =
    lengthCss > 0
      ? { xCss: (to.xCss - from.xCss) / lengthCss, yCss: (to.yCss - from.yCss) / lengthCss }
      : { xCss: 1, yCss: 0 };
  const halfBreakCss = halfWidthAlong(along, text.widthCss / 2 + CLEAR_CSS, text.heightCss / 2 + CLEAR_CSS);
  const at = (css: number): ScreenPoint => ({
    xCss: from.xCss + along.xCss * css,
    yCss: from.yCss + along.yCss * css,
  });

  if (lengthCss >= 2 * (ARROW_CSS + CLEAR_CSS + halfBreakCss))
    return {
      shafts: [
        [at(ARROW_CSS), at(lengthCss / 2 - halfBreakCss)],
        [at(lengthCss / 2 + halfBreakCss), at(lengthCss - ARROW_CSS)],
      ],
      arrows: [arrow(from, along, 1), arrow(to, along, -1)],
      value: boxAbout(at(lengthCss / 2), text),
    };

  const outsideCss = ARROW_CSS + TAIL_CSS;
  const beyond = boxAbout(at(lengthCss + outsideCss + halfBreakCss), text);
  const before = boxAbout(at(-outsideCss - halfBreakCss), text);
  return {
    shafts: [
      [at(-outsideCss), at(-ARROW_CSS)],
      [at(0), at(lengthCss)],
      [at(lengthCss + ARROW_CSS), at(lengthCss + outsideCss)],
    ],
    arrows: [arrow(from, along, -1), arrow(to, along, 1)],
    value: isInside(beyond, screen) || !isInside(before, screen) ? beyond : before,
  };
}

function arrow(tip: ScreenPoint, along: ScreenPoint, sense: 1 | -1): Triangle {
  const backX = tip.xCss + sense * ARROW_CSS * along.xCss;
  const backY = tip.yCss + sense * ARROW_CSS * along.yCss;
  const halfX = (-along.yCss * ARROW_CSS) / 6;
  const halfY = (along.xCss * ARROW_CSS) / 6;
  return [tip, { xCss: backX + halfX, yCss: backY + halfY }, { xCss: backX - halfX, yCss: backY - halfY }];
}

function halfWidthAlong(along: ScreenPoint, halfWidthCss: number, halfHeightCss: number): number {
  return Math.min(halfWidthCss / Math.abs(along.xCss), halfHeightCss / Math.abs(along.yCss));
}

function boxAbout(middle: ScreenPoint, size: { widthCss: number; heightCss: number }): Box {
  return {
    leftCss: middle.xCss - size.widthCss / 2,
    topCss: middle.yCss - size.heightCss / 2,
    widthCss: size.widthCss,
    heightCss: size.heightCss,
  };
}

function isInside(box: Box, screen: ScreenSize): boolean {
  return (
    box.leftCss >= 0 &&
    box.topCss >= 0 &&
    box.leftCss + box.widthCss <= screen.widthCss &&
    box.topCss + box.heightCss <= screen.heightCss
  );
}
