/**
 * The places of a stretch of the push rod, and of the rod before and past its edge: columns between two, moved by the edge's arc on each line.
 */
import type { BandEnds, Loudness } from './paint-ends.ts';
import type { Hue } from './paint-light.ts';
import type { PaintCell, PaintMap } from './paint-map.ts';
import { median } from './paint-numbers.ts';
import { cellsOf, columnOf, type Strip } from './paint-strip.ts';

/** Along which a band's edge is mixed with what lies past it. */
export const EDGE_MM = 0.3;

export type LinesAbout = Readonly<Record<'near' | 'past', readonly (readonly PaintCell[])[]>>;

/** The places of each line of the rod before the edge, and past it. */
export function linesAbout(strip: Strip, { core }: PaintMap, { to, bend }: BandEnds): LinesAbout {
  const cells = cellsOf(strip);
  const gap = cells(EDGE_MM);
  const lines = (from: number, end: number) =>
    core.map((line, row) => placesBetween([line], [bend[row] ?? 0], from, end));
  return {
    near: lines(Math.max(columnOf(strip, 0.5), to - cells(6)), to - gap),
    past: lines(to + gap, to + gap + cells(12)),
  };
}

export function placesBetween(
  core: PaintMap['core'],
  bend: readonly number[],
  from: number,
  to: number,
): readonly PaintCell[] {
  const found: PaintCell[] = [];
  core.forEach((line, row) => {
    const moved = bend[row] ?? 0;
    for (let column = Math.max(0, from + moved); column < Math.min(line.length, to + moved); column += 1) {
      const cell = line[column];
      if (cell) found.push(cell);
    }
  });
  return found;
}

export function loudsBetween(
  loudness: Loudness,
  bend: readonly number[],
  from: number,
  to: number,
): readonly number[] {
  const found: number[] = [];
  loudness.forEach((line, row) => {
    const moved = bend[row] ?? 0;
    for (let column = Math.max(0, from + moved); column < Math.min(line.length, to + moved); column += 1) {
      const value = line[column] as number;
      if (!Number.isNaN(value)) found.push(value);
    }
  });
  return found;
}

export const medianHue = (cells: readonly PaintCell[]): Hue => [
  median(cells.map(({ hue }) => hue[0])),
  median(cells.map(({ hue }) => hue[1])),
];
