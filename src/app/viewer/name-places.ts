/**
 * Where the marks' names stand.
 *
 * Model    Eight places round each mark, right first. A place costs the area by which its box covers crosses, names set
 *          before and the dimension's value, the lines that strike it through, and the area that hangs off the screen.
 *          Greedy: needed names first, the others as they come.
 * Fails    a name whose every place covers something is left out (null), unless it is needed (its mark selected or doubtful): the
 *          cross stays, and zooming in makes room. A name whose mark is off the screen is left out too.
 */
import { areaCss2, type Box, overlapCss2 } from './box.ts';
import { lengthInsideCss, type Segment } from './segment.ts';
import type { ScreenPoint, ScreenSize } from './view-transform.ts';

export type NameToPlace = {
  readonly id: string;
  readonly at: ScreenPoint;
  readonly widthCss: number;
  readonly heightCss: number;
  /** Half the width of the mark's own drawing. */
  readonly reachCss: number;
  readonly needed: boolean;
  /** Not named, but its cross is kept clear of the names of others. */
  readonly silent: boolean;
};

const GAP_CSS = 3;
/** A space between words, and the light edge of both. */
const APART_CSS = 7;
/** A cross covered by so little of its arms is still plain to see. */
const SLIGHT_CSS2 = 12;
/** What an off-screen part of a name costs against a covered cross. */
const OFF_SCREEN_COST = 0.5;
/** A line through a name is as bad as a bar of this width over it. */
const LINE_CSS = 4;

type Price = { readonly box: Box; readonly covered: number; readonly cost: number };

export function namePlaces(
  names: readonly NameToPlace[],
  keepClear: { readonly boxes: readonly Box[]; readonly lines: readonly Segment[] },
  screen: ScreenSize,
): ReadonlyMap<string, Box | null> {
  const taken: Box[] = [...keepClear.boxes.map(spaced), ...names.map((name) => crossBox(name))];
  const places = new Map<string, Box | null>();
  const order = [...names.filter((name) => name.needed), ...names.filter((name) => !name.needed)];
  for (const name of order) {
    const priced = candidates(name).map((box) => priceOf(box, taken, keepClear.lines, screen));
    const best = priced.reduce((least, next) => (next.cost < least.cost ? next : least));
    const shown = !name.silent && isSeen(name.at, screen) && (best.covered <= SLIGHT_CSS2 || name.needed);
    const box = shown ? best.box : null;
    places.set(name.id, box);
    if (box) taken.push(spaced(box));
  }
  return places;
}

/** Names side by side are read apart. */
function spaced(box: Box): Box {
  return { ...box, leftCss: box.leftCss - APART_CSS, widthCss: box.widthCss + 2 * APART_CSS };
}

function candidates(name: NameToPlace): readonly Box[] {
  const { at, widthCss, heightCss, reachCss } = name;
  const box = (leftCss: number, topCss: number): Box => ({ leftCss, topCss, widthCss, heightCss });
  const right = at.xCss + reachCss + GAP_CSS;
  const left = at.xCss - reachCss - GAP_CSS - widthCss;
  const above = at.yCss - reachCss - GAP_CSS - heightCss;
  const below = at.yCss + reachCss + GAP_CSS;
  const level = at.yCss - heightCss / 2;
  // Beside a diagonal the name may come closer: the arms leave the corners free.
  const near = reachCss / 2;
  return [
    box(right, level),
    box(left, level),
    box(at.xCss + near, at.yCss - near - heightCss),
    box(at.xCss + near, at.yCss + near),
    box(at.xCss - near - widthCss, at.yCss - near - heightCss),
    box(at.xCss - near - widthCss, at.yCss + near),
    box(at.xCss - widthCss / 2, above),
    box(at.xCss - widthCss / 2, below),
  ];
}

function priceOf(box: Box, taken: readonly Box[], lines: readonly Segment[], screen: ScreenSize): Price {
  const whole: Box = { leftCss: 0, topCss: 0, ...screen };
  const offScreen = areaCss2(box) - overlapCss2(box, whole);
  const covered = taken.reduce((sum, other) => sum + overlapCss2(box, other), 0);
  const struck = lines.reduce((sum, line) => sum + lengthInsideCss(line, box), 0);
  return { box, covered, cost: covered + LINE_CSS * struck + OFF_SCREEN_COST * offScreen };
}

function isSeen(at: ScreenPoint, screen: ScreenSize): boolean {
  return at.xCss >= 0 && at.yCss >= 0 && at.xCss <= screen.widthCss && at.yCss <= screen.heightCss;
}

function crossBox(name: NameToPlace): Box {
  const half = name.reachCss;
  return {
    leftCss: name.at.xCss - half,
    topCss: name.at.yCss - half,
    widthCss: 2 * half,
    heightCss: 2 * half,
  };
}
