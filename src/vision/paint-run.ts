/**
 * What a stretch of the push rod is like, from a candidate for a band's outer edge back to where it began.
 *
 * Model    numbers of the stretch, of the rod outside it, of the edge between them and of what lies beside the rod, see PaintRun; lines
 *          are followed along the edge's own arc
 *          a ring's edge is even about the rod's middle, so a straight line through its places across has no slope
 */
import { colourApart, streakyOf } from './paint-apart.ts';
import { type Beside, besideOf, besideRod, isNear } from './paint-beside.ts';
import { type ColourEdge, colourEdge, colourOf } from './paint-colour-edge.ts';
import { edgeShape } from './paint-edge-shape.ts';
import type { BandEnds, Loudness } from './paint-ends.ts';
import { type BandColour, paintness } from './paint-hues.ts';
import type { Hue } from './paint-light.ts';
import type { RodLook } from './paint-look.ts';
import { CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { meanBetween, meanOf, median, quantile } from './paint-numbers.ts';
import {
  EDGE_MM,
  type LinesAbout,
  linesAbout,
  loudsBetween,
  medianHue,
  placesBetween,
} from './paint-places.ts';
import { shadedAlike, shadedAlong } from './paint-shading.ts';
import { alongOf, cellsOf, columnOf, type Strip } from './paint-strip.ts';

export type PaintRun = ColourEdge & {
  readonly colour: BandColour;
  readonly fromMm: number;
  readonly toMm: number;
  /** Mean fall of the loudness over the edge. */
  readonly fall: number;
  /** The same over what it scatters by from place to place across. */
  readonly fallEven: number;
  /** Share of the places across at which it falls by more than half the mean. */
  readonly fallRows: number;
  /** Mean steps over the edge of u, v and the logarithm of red and green. */
  readonly stepU: number;
  readonly stepV: number;
  readonly stepRed: number;
  readonly stepGreen: number;
  /** Of the line through the edge's places, mm over one half width; what they scatter about it, mm. */
  readonly slopeMm: number;
  readonly scatterMm: number;
  /** Along which the loudness falls from four fifths to one fifth of the drop. */
  readonly widthMm: number;
  /** Medians of the stretch. */
  readonly v: number;
  readonly light: number;
  readonly paintness: number;
  /** Median distance of hues from those medians, in the stretch; of the rod past it. */
  readonly mottled: number;
  readonly mottledOutside: number;
  /** Shares of places louder than halfway: of the stretch, and of the rod outside it. */
  readonly covered: number;
  readonly alike: number;
  /** Loudness of the stretch over the highest tenth of the rod outside it. */
  readonly above: number;
  /** Hue of the rod past the edge. */
  readonly outsideU: number;
  readonly outsideV: number;
  /** Share of what is seen beside the rod that is as loud in hue. */
  readonly about: number;
  /** Greatest fall beside the rod where the edge would go on, over the edge's own. */
  readonly besideFall: number;
  /** Share of paint beside the rod along the stretch, the two sides; how far its outer edge lies from the stretch's there, mm. */
  readonly besideShare: readonly [number, number];
  readonly besideApartMm: readonly [number, number];
  /** The mean fall along the best straight line aslant over the arc, over that along the arc. */
  readonly aslant: number;
  /** Shares of the rod outside, and of what lies beside the rod, that have nearly the stretch's hue. */
  readonly hueOnRod: number;
  readonly hueBeside: number;
  /** How much less yellow the stretch is than what else is as red as it. */
  readonly lessYellow: number;
  /** Shares of the stretch's length that have its hue beside the rod, at the best shift along it; the lesser of both sides. */
  readonly crosses: number;
  /** Share of the stretch's columns where the rod's edges cannot be told: the same hue and light lie on both sides of them. */
  readonly edgeless: number;
  /** Share of what lies beside the rod about the face that has the stretch's hue. */
  readonly atFace: number;
  /** High u of what lies beside the rod. */
  readonly besideU: number;
  /** By how much the chamber's face is more like paint than the stretch. */
  readonly faceLouder: number;
  /** The greatest fall elsewhere along the rod, over this one. */
  readonly rival: number;
  /** Median over the places across of the greatest fall near the edge. */
  readonly drop: number;
  /** Loudness of the stretch, median, and its sum along it, mm. */
  readonly loud: number;
  readonly mass: number;
  /** The most even change of colour at another end, over that at its own. */
  readonly evenRival: number;
  /** How far the colours of the stretch near its edge lie from those of the rod past it, in spreads of both, squared; a logarithm. */
  readonly apart: number;
  /** Median difference of ln red from its line's median: of the stretch, of the rod past it. */
  readonly streaky: number;
  readonly streakyOutside: number;
  /** How surely something runs across the rod there and goes on to both sides of it, mean over the stretch (paint-carry-on). */
  readonly carriesOn: number;
  /** Which way the light changes over the stretch, and whether over the rod's width as past it (paint-shading). */
  readonly shadedAlong: number;
  readonly shadedAlike: number;
  /** Shares that are burnt out in red: of the stretch, of the rod past it. */
  readonly burnt: number;
  readonly burntOutside: number;
  /** How near the hues of the rod outside come to that of the stretch. */
  readonly nearestOnRod: number;
};

/** What ends nearer to the face may be the face's own; what is shorter, a blur of it. */
const LEAST_REACH_MM = 1.2;
const LEAST_LENGTH_MM = 1;

type Reach = Pick<PaintRun, 'fromMm' | 'toMm'>;

export const lengthMm = ({ fromMm, toMm }: Reach): number => toMm - Math.max(0, fromMm);

/** Of those candidates that are far and long enough to be weighed. */
export function paintRuns(
  strip: Strip,
  map: PaintMap,
  loudness: Loudness,
  colour: BandColour,
  look: RodLook,
  ends: readonly BandEnds[],
): readonly PaintRun[] {
  const beside = besideRod(strip, map, colour);
  return ends.flatMap((each) => {
    const reach = {
      fromMm: alongOf(strip, each.from) - strip.stepMm / 2,
      toMm: alongOf(strip, each.to) - strip.stepMm / 2,
    };
    return reach.toMm > LEAST_REACH_MM && lengthMm(reach) > LEAST_LENGTH_MM
      ? [runOf({ ...look, strip, map, loudness, beside }, colour, each, ends, reach)]
      : [];
  });
}

type Look = RodLook & {
  readonly strip: Strip;
  readonly map: PaintMap;
  readonly loudness: Loudness;
  readonly beside: Beside;
};

function runOf(
  look: Look,
  colour: BandColour,
  ends: BandEnds,
  all: readonly BandEnds[],
  reach: Reach,
): PaintRun {
  const { strip, map, loudness, beside } = look;
  const { from, to, bend, level } = ends;
  const cells = cellsOf(strip);
  const places = (a: number, b: number) => placesBetween(map.core, bend, a, b);
  const inside = places(from, Math.max(from + 1, to - cells(EDGE_MM)));
  const stretch = medianHue(inside);
  const outside = places(to + cells(1), to + cells(16));
  const past = medianHue(outside);
  const off = [
    ...places(columnOf(strip, 0.5), from - cells(1.5)),
    ...places(to + cells(1.5), to + cells(23)),
  ];
  const insidePaintness = median(inside.map(({ hue }) => paintness(colour, hue)));
  const insideLoud = loudsBetween(loudness, bend, from, to);
  const loud = median(insideLoud);
  const outsideLoud = [
    ...loudsBetween(loudness, bend, columnOf(strip, 0.5), from - cells(1.5)),
    ...loudsBetween(loudness, bend, to + cells(1.5), to + cells(23)),
  ];
  const edge = edgeShape(strip, loudness, ends);
  const about = linesAbout(strip, map, ends);
  return {
    ...edge,
    ...colourChange(look, about, ends, all),
    ...shadedOver(look, about, ends),
    ...reach,
    ...stepsOver(map, ends, cells),
    ...besideOf(strip, beside, ends, {
      hue: stretch,
      loudFrom: insidePaintness - 0.5 * Math.max(0.2, loud - level),
      fall: edge.fall,
    }),
    colour,
    v: stretch[1],
    light: median(inside.map(({ light }) => light)),
    paintness: insidePaintness,
    faceLouder: beside.facePaint - insidePaintness,
    mottled: median(inside.map(({ hue }) => Math.hypot(hue[0] - stretch[0], hue[1] - stretch[1]))),
    mottledOutside: median(outside.map(({ hue }) => Math.hypot(hue[0] - past[0], hue[1] - past[1]))),
    covered: louderShare(insideLoud, level),
    alike: louderShare(outsideLoud, level),
    above: loud - quantile(outsideLoud, 0.9),
    outsideU: past[0],
    outsideV: past[1],
    burnt: burntShare(inside),
    nearestOnRod: quantile(
      off.map(({ hue }) => Math.hypot(hue[0] - stretch[0], hue[1] - stretch[1])),
      NEAREST,
    ),
    hueOnRod: off.filter(({ hue }) => isNear(hue, stretch)).length / Math.max(1, off.length),
    lessYellow: lessYellowThan(stretch, off, beside.cells),
    rival:
      Math.max(0, ...all.filter((other) => Math.abs(other.to - to) > cells(2.5)).map((other) => other.fall)) /
      Math.max(0.05, ends.fall),
    loud,
    mass: Math.log(
      1 + Math.max(0, insideLoud.reduce((sum, value) => sum + value, 0) / CORE.length) * strip.stepMm,
    ),
  };
}

function colourChange(
  { strip, sums }: Look,
  { near, past }: LinesAbout,
  ends: BandEnds,
  all: readonly BandEnds[],
) {
  const { to } = ends;
  const cells = cellsOf(strip);
  const own = colourEdge(strip, sums, ends);
  const others = all
    .filter((other) => Math.abs(other.to - to) > cells(2.5))
    .map((other) => colourEdge(strip, sums, other).even);
  const colours = (lines: typeof near) => lines.flatMap((line) => line.map(colourOf));
  const reds = (lines: typeof near) => lines.map((line) => line.map((cell) => colourOf(cell)[2]));
  return {
    ...own,
    evenRival: Math.max(0, ...others) / (own.even + 0.2),
    apart: colourApart(colours(near), colours(past)),
    streaky: streakyOf(reds(near)),
    streakyOutside: streakyOf(reds(past)),
  };
}

function shadedOver({ strip, carry, shading }: Look, { near, past }: LinesAbout, ends: BandEnds) {
  const from = Math.max(columnOf(strip, 0.5), ends.from);
  return {
    carriesOn: meanBetween(carry, from, ends.to),
    shadedAlong: shadedAlong(shading, from, ends.to),
    shadedAlike: shadedAlike(near, past),
    burntOutside: burntShare(past.flat()),
  };
}

const BURNT = 0.9;
const burntShare = (cells: readonly PaintCell[]): number =>
  cells.filter(({ red }) => red > BURNT).length / Math.max(1, cells.length);

/** Share of the rod outside that is nearer yet: a few places of it tell nothing. */
const NEAREST = 0.02;

function stepsOver({ core }: PaintMap, { from, to, bend }: BandEnds, cells: (mm: number) => number) {
  const [reach, gap] = [cells(2.5), cells(EDGE_MM)];
  const near = placesBetween(core, bend, Math.max(from, to - reach - gap), to - gap);
  const past = placesBetween(core, bend, to + gap, to + gap + reach);
  const step = (of: (cell: PaintCell) => number) => meanOf(near.map(of)) - meanOf(past.map(of));
  return {
    stepU: step(({ hue }) => hue[0]),
    stepV: step(({ hue }) => hue[1]),
    stepRed: step(({ red }) => Math.log(red + 0.002)),
    stepGreen: step(({ red, hue }) => Math.log(red + 0.002) - hue[0]),
  };
}

const louderShare = (values: readonly number[], level: number): number =>
  values.filter((value) => value > level).length / Math.max(1, values.length);

const FEW = 20;

function lessYellowThan([u, v]: Hue, ...those: readonly (readonly PaintCell[])[]): number {
  const yellows: number[] = [];
  for (const cells of those)
    for (const { hue } of cells)
      if (Math.abs(hue[0] - u) < 0.3 && !(Math.hypot(hue[0] - u, hue[1] - v) < 0.1)) yellows.push(hue[1]);
  return yellows.length < FEW ? 0.5 : median(yellows) - v;
}
