/**
 * Where in a picture things are that do not stand still between two pictures: outlines to be left out by who looks for what does.
 *
 * Model    strips about rod and arm, a disc about the camshaft's end for the adjuster's body, strips about what is held: tape, target,
 *          known distance, each with room for the hand at its ends
 *          sizes on the arm's own scale (127 to 165 mm between pin and camshaft), on the tape's or the target's where they are marked
 * Assumes  a view from the side
 * Fails    without the camshaft's end the arm may point anywhere: a disc about the pin then, as far as an arm reaches
 */
import type { Mark } from './mark.ts';
import type { View } from './view.ts';

type Place = readonly [x: number, y: number];
export type Outline = readonly Place[];

/** Half widths over the arm's length: clevis and arm are up to 70 mm wide, an adjuster's body is 120 mm across. */
const ARM_STRIP = 0.25;
const BODY = 0.45;
/** How far past its marks a part goes, over the arm's length. */
const PAST_PIN = 0.25;
/** Over face to pin, which is 110 mm and more: arm and body without the camshaft's end. */
const ANY_ARM = 1.8;
/** Blade and what it hides as it moves, hook, case and hand, mm. */
const TAPE = { half: 35, before: 45, handHalf: 120, hand: 500 };
/** Over a side of a marker, 24 mm. */
const TARGET = { half: 1.6, past: 5 };
/** Over the distance itself. */
const DISTANCE = { half: 0.2, past: 0.5 };

export function movingOutlines({ marks }: Pick<View, 'marks'>): readonly Outline[] {
  return [...mechanism(marks), ...tape(marks), ...target(marks), ...distance(marks)];
}

function mechanism(marks: readonly Mark[]): Outline[] {
  const [face, pin, camshaft] = (['chamber-face', 'clevis-pin', 'camshaft-end'] as const).map((kind) =>
    meanOf(marks.filter((mark) => mark.kind === kind)),
  );
  if (!face || !pin) return [];
  if (!camshaft) return [disc(pin, ANY_ARM * apart(face, pin))];
  const arm = apart(pin, camshaft);
  return [
    strip(face, pin, ARM_STRIP * arm, 0, PAST_PIN * arm),
    strip(pin, camshaft, ARM_STRIP * arm, PAST_PIN * arm, 0),
    disc(camshaft, BODY * arm),
  ];
}

function tape(marks: readonly Mark[]): Outline[] {
  const graduations = marks
    .filter((mark) => mark.kind === 'tape-graduation')
    .sort((a, b) => a.readingMm - b.readingMm);
  const [low, high] = [graduations[0], graduations.at(-1)];
  if (!low || !high || low.readingMm === high.readingMm) return [];
  const [from, to] = [placeOf(low), placeOf(high)];
  const pxPerMm = apart(from, to) / (high.readingMm - low.readingMm);
  const { half, before, handHalf, hand } = TAPE;
  return [
    strip(from, to, half * pxPerMm, (low.readingMm + before) * pxPerMm, hand * pxPerMm),
    strip(to, along(from, to, hand * pxPerMm), handHalf * pxPerMm, 0, 0),
  ];
}

function target(marks: readonly Mark[]): Outline[] {
  const corners = marks.filter((mark) => mark.kind === 'target-corner');
  const [first, last] = [corners[0], corners.at(-1)];
  if (!first || !last) return [];
  const of = (marker: number) => corners.filter((corner) => corner.marker === marker);
  const order = [...new Set(corners.map(({ marker }) => marker))].sort((a, b) => a - b);
  const [from, to] = [meanOf(of(order[0] ?? 0)), meanOf(of(order.at(-1) ?? 0))];
  if (!from || !to) return [];
  const side = Math.max(
    ...corners.map((corner) => apart(placeOf(corner), meanOf(of(corner.marker)) ?? from)),
  );
  const sidePx = Math.SQRT2 * side;
  return [strip(from, to, TARGET.half * sidePx, TARGET.past * sidePx, TARGET.past * sidePx)];
}

function distance(marks: readonly Mark[]): Outline[] {
  const [from, to] = marks.filter((mark) => mark.kind === 'distance-end').map(placeOf);
  if (!from || !to) return [];
  const length = apart(from, to);
  return [strip(from, to, DISTANCE.half * length, DISTANCE.past * length, DISTANCE.past * length)];
}

const placeOf = ({ xPx, yPx }: Mark): Place => [xPx, yPx];
const apart = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);

function meanOf(marks: readonly Mark[]): Place | null {
  if (marks.length === 0) return null;
  const sum = marks.reduce<Place>(([x, y], mark) => [x + mark.xPx, y + mark.yPx], [0, 0]);
  return [sum[0] / marks.length, sum[1] / marks.length];
}

/** Past `to`, on the line from `from`. */
function along(from: Place, to: Place, byPx: number): Place {
  const length = Math.max(apart(from, to), 1e-9);
  const step = byPx / length;
  return [to[0] + step * (to[0] - from[0]), to[1] + step * (to[1] - from[1])];
}

function strip(from: Place, to: Place, half: number, before: number, after: number): Outline {
  const [a, b] = [along(to, from, before), along(from, to, after)];
  const length = Math.max(apart(a, b), 1e-9);
  const [sx, sy] = [(-half * (b[1] - a[1])) / length, (half * (b[0] - a[0])) / length];
  return [
    [a[0] + sx, a[1] + sy],
    [b[0] + sx, b[1] + sy],
    [b[0] - sx, b[1] - sy],
    [a[0] - sx, a[1] - sy],
  ];
}

function disc([x, y]: Place, radius: number): Outline {
  return Array.from({ length: 24 }, (_, i): Place => {
    const turn = (i * Math.PI) / 12;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}
