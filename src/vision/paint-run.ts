/**
 * What a stretch of the push rod is like, from a candidate for a band's outer edge back to where it began.
 *
 * Model    numbers of the stretch, of the rod outside it, of the edge between them and of what lies beside the rod, see PaintRun; lines
 *          are followed along the edge's own arc
 *          a ring's edge is even about the rod's middle, so a straight line through its places across has no slope
 */

import { besideApart, bestShare, edgelessShare, NEAR_HUE } from './paint-beside.ts';
import { aslantOf, edgeWidth, fallNear, lineThrough, outerEdge } from './paint-edge-shape.ts';
import type { BandEnds, Loudness } from './paint-ends.ts';
import { type BandColour, paintness } from './paint-hues.ts';
import { BESIDE, CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { meanOf, median, quantile } from './paint-numbers.ts';
import { alongOf, columnOf, type Strip } from './paint-strip.ts';

export type PaintRun = {
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
  /** The greatest fall elsewhere along the rod, over this one. */
  readonly rival: number;
  /** Median over the places across of the greatest fall near the edge. */
  readonly drop: number;
  /** Loudness of the stretch, median, and its sum along it, mm. */
  readonly loud: number;
  readonly mass: number;
};

export function paintRun(
  strip: Strip,
  map: PaintMap,
  loudness: Loudness,
  colour: BandColour,
  ends: BandEnds,
  all: readonly BandEnds[],
): PaintRun {
  const { from, to, bend, level } = ends;
  const cells = (mm: number) => Math.max(1, Math.round(mm / strip.stepMm));
  const part = <T>(line: readonly T[], row: number, a: number, b: number): readonly T[] =>
    line.slice(Math.max(0, a + (bend[row] ?? 0)), Math.max(0, b + (bend[row] ?? 0)));
  const places = (a: number, b: number) =>
    map.core.flatMap((line, row) => part(line, row, a, b).flatMap((cell) => cell ?? []));
  const louds = (a: number, b: number) =>
    loudness.flatMap((line, row) => part(line, row, a, b).filter((value) => !Number.isNaN(value)));

  const reach = cells(2.5);
  const gap = cells(0.3);
  const falls = loudness
    .map((line, row) => meanOf(part(line, row, to - reach, to)) - meanOf(part(line, row, to, to + reach)))
    .filter((value) => !Number.isNaN(value));
  const fall = meanOf(falls);
  const spread = Math.sqrt(meanOf(falls.map((value) => (value - fall) ** 2)));
  const [near, past] = [
    places(Math.max(from, to - reach - gap), to - gap),
    places(to + gap, to + gap + reach),
  ];
  const step = (of: (cell: PaintCell) => number) => meanOf(near.map(of)) - meanOf(past.map(of));

  const inside = places(from, Math.max(from + 1, to - gap));
  const [u, v] = [0, 1].map((axis) => median(inside.map(({ hue }) => hue[axis as 0 | 1]))) as [
    number,
    number,
  ];
  const outside = places(to + cells(1), to + cells(16));
  const [outsideU, outsideV] = [0, 1].map((axis) => median(outside.map(({ hue }) => hue[axis as 0 | 1]))) as [
    number,
    number,
  ];
  const insideLoud = louds(from, to);
  const outsideLoud = [
    ...louds(columnOf(strip, 0.5), from - cells(1.5)),
    ...louds(to + cells(1.5), to + cells(23)),
  ];
  const loud = (values: readonly number[]) =>
    values.filter((value) => value > level).length / Math.max(1, values.length);

  const beside = map.beside.map((line) =>
    line.map((cell) => (cell ? paintness(colour, cell.hue) : Number.NaN)),
  );
  const insidePaintness = median(inside.map(({ hue }) => paintness(colour, hue)));
  const besideLevel = insidePaintness - 0.5 * Math.max(0.2, median(insideLoud) - level);
  const isLoud = (value: number) => value > besideLevel;
  const loudShare = (values: readonly number[]) => values.filter(isLoud).length / Math.max(1, values.length);

  const like = ({ hue }: PaintCell) => Math.hypot(hue[0] - u, hue[1] - v) < NEAR_HUE;
  const share = (those: readonly PaintCell[]) => those.filter(like).length / Math.max(1, those.length);
  const off = [
    ...places(columnOf(strip, 0.5), from - cells(1.5)),
    ...places(to + cells(1.5), to + cells(23)),
  ];
  const besideCells = map.beside.flat().flatMap((cell) => cell ?? []);
  const asRed = [...off, ...besideCells].filter(
    ({ hue }) => Math.abs(hue[0] - u) < 0.3 && !(Math.hypot(hue[0] - u, hue[1] - v) < 0.1),
  );
  const edges = loudness.map((line, row) => outerEdge(strip, line, to + (bend[row] ?? 0)));
  const [slopeMm, scatterMm] = lineThrough(edges);
  return {
    colour,
    fromMm: alongOf(strip, from) - strip.stepMm / 2,
    toMm: alongOf(strip, to) - strip.stepMm / 2,
    fall,
    fallEven: fall / (spread + 0.05),
    fallRows: falls.filter((value) => value > 0.5 * fall && value > 0.04).length / Math.max(1, falls.length),
    stepU: step(({ hue }) => hue[0]),
    stepV: step(({ hue }) => hue[1]),
    stepRed: step(({ red }) => Math.log(red + 0.002)),
    stepGreen: step(({ red, hue }) => Math.log(red + 0.002) - hue[0]),
    slopeMm,
    scatterMm,
    widthMm: edgeWidth(strip, loudness, to, bend),
    v,
    light: median(inside.map(({ light }) => light)),
    paintness: insidePaintness,
    mottled: median(inside.map(({ hue }) => Math.hypot(hue[0] - u, hue[1] - v))),
    mottledOutside: median(outside.map(({ hue }) => Math.hypot(hue[0] - outsideU, hue[1] - outsideV))),
    covered: loud(insideLoud),
    alike: loud(outsideLoud),
    above: median(insideLoud) - quantile(outsideLoud, 0.9),
    outsideU,
    outsideV,
    about: loudShare(beside.flat().filter((value) => !Number.isNaN(value))),
    besideFall: Math.max(...beside.map((line) => fallNear(strip, line, to))) / Math.max(0.05, fall),
    besideShare: [0, 1].map((side) =>
      meanOf(sideOf(beside, side).map((line) => loudShare(line.slice(from, Math.max(from + 1, to))))),
    ) as [number, number],
    besideApartMm: [0, 1].map((side) =>
      Math.min(...sideOf(beside, side).map((line) => besideApart(strip, line, to, isLoud))),
    ) as [number, number],
    aslant: aslantOf(strip, loudness, to, bend, fall),
    hueOnRod: share(off),
    hueBeside: share(besideCells),
    lessYellow: asRed.length < 20 ? 0.5 : median(asRed.map(({ hue }) => hue[1])) - v,
    crosses: Math.min(
      ...[0, 1].map((side) =>
        median(
          sideOf(map.beside, side).map((line) =>
            bestShare(
              line.map((cell) => cell !== null && like(cell)),
              Math.max(cells(2), to - Math.max(from, columnOf(strip, 0))),
              from - cells(25),
              to + cells(25),
            ),
          ),
        ),
      ),
    ),
    edgeless: edgelessShare(map, from, to),
    atFace: share(
      map.beside.flatMap((line) =>
        line.slice(columnOf(strip, -6), columnOf(strip, 0.5)).flatMap((cell) => cell ?? []),
      ),
    ),
    besideU: quantile(
      besideCells.map(({ hue }) => hue[0]),
      0.8,
    ),
    rival:
      Math.max(0, ...all.filter((other) => Math.abs(other.to - to) > cells(2.5)).map((other) => other.fall)) /
      Math.max(0.05, ends.fall),
    drop: median(loudness.map((line, row) => fallNear(strip, line, to + (bend[row] ?? 0)))),
    loud: median(insideLoud),
    mass: Math.log(
      1 + Math.max(0, insideLoud.reduce((sum, value) => sum + value, 0) / CORE.length) * strip.stepMm,
    ),
  };
}

const sideOf = <T>(beside: readonly T[], side: number): readonly T[] =>
  beside.filter((_, i) => (BESIDE[i] as number) > 0 === (side === 1));
