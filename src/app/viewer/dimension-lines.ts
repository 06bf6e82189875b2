/**
 * The stroke as a drafting dimension, in screen pixels, so that it keeps its line widths and arrowheads at every zoom.
 *
 * Model    Arrowheads 3 : 1, tips on the extension lines. The value stands upright in a break at the middle of the
 *          dimension line. Where arrowheads and value do not fit between the extension lines, the arrowheads stand
 *          outside pointing in, and the value beyond an end or beside the line, moved as far as it takes to be read whole: of
 *          those places that have room on the screen the first that covers no mark, else the one that covers least.
 * Fails    a dimension of no length has no direction: it is drawn as if it ran to the right.
 * Source   practice of ISO 129-1 (arrowheads outside, interrupted line with upright value; from memory).
 */
import { type Box, overlapCss2 } from './box.ts';
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
const FAR = 2;
/** What a mark's cross takes. */
const CROSS_CSS = { widthCss: 20, heightCss: 20 };

export function dimensionLines(
  ends: Segment,
  text: { readonly widthCss: number; readonly heightCss: number },
  screen: ScreenSize,
  marks: readonly ScreenPoint[] = [],
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
  const beside = [-1, 1, -FAR, FAR].map((side) => {
    const across = { xCss: -along.yCss * Math.sign(side), yCss: along.xCss * Math.sign(side) };
    // As far as the box reaches towards the line, or once more than that.
    const awayCss =
      Math.abs(side) *
      (CLEAR_CSS + (Math.abs(across.xCss) * text.widthCss + Math.abs(across.yCss) * text.heightCss) / 2);
    const { xCss, yCss } = at(lengthCss / 2);
    const box = boxAbout({ xCss: xCss + awayCss * across.xCss, yCss: yCss + awayCss * across.yCss }, text);
    return movedAlong(along, box, screen);
  });
  return {
    shafts: [
      [at(-outsideCss), at(-ARROW_CSS)],
      [at(0), at(lengthCss)],
      [at(lengthCss + ARROW_CSS), at(lengthCss + outsideCss)],
    ],
    arrows: [arrow(from, along, -1), arrow(to, along, 1)],
    value:
      clearest(
        [beyond, before, ...beside].filter((box) => isInside(box, screen)),
        marks,
      ) ?? beyond,
  };
}

/** The first of those that cover least. */
function clearest(boxes: readonly Box[], marks: readonly ScreenPoint[]): Box | undefined {
  const coveredCss2 = boxes.map((box) =>
    marks.reduce((sum, mark) => sum + overlapCss2(box, boxAbout(mark, CROSS_CSS)), 0),
  );
  return boxes[coveredCss2.indexOf(Math.min(...coveredCss2))];
}

/** Along its line, so that it stays clear of it, and by half its own width at most: what is off the screen keeps its value there. */
function movedAlong(along: ScreenPoint, box: Box, { widthCss }: ScreenSize): Box {
  const missing = Math.max(-box.leftCss, 0) - Math.max(0, box.leftCss + box.widthCss - widthCss);
  const moveCss = Math.sign(missing) * Math.min(Math.abs(missing), box.widthCss / 2);
  const slope = along.xCss === 0 ? 0 : along.yCss / along.xCss;
  return { ...box, leftCss: box.leftCss + moveCss, topCss: box.topCss + moveCss * slope };
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
