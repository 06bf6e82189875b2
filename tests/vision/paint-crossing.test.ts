/** What tells a hose that crosses the push rod from a band on it, on maps made here. */
import { describe, expect, test } from 'vitest';
import { carryOn } from '../../src/vision/paint-carry-on.ts';
import { BESIDE, CORE, type PaintCell, type PaintMap } from '../../src/vision/paint-map.ts';
import { shadedAlike, shadedAlong, shadingOf } from '../../src/vision/paint-shading.ts';
import { columnOf, type Strip } from '../../src/vision/paint-strip.ts';

/** Half a width is 8 mm. */
const strip: Strip = {
  rows: 1,
  columns: 264,
  stepMm: 0.25,
  stepAcross: 1 / 32,
  linear: new Float32Array(0),
};
const edges = { offset: 0, turn: 0, half: 1, evidence: 1 };
const HALF_MM = 8;

const cell = (hue: readonly [number, number], light = 0.2): PaintCell => ({ hue, light, red: light });
/** as: of a place across, in half widths, and along the rod from the face, in mm. */
const mapOf = (as: (across: number, alongMm: number) => PaintCell): PaintMap => {
  const line = (across: number) =>
    Array.from({ length: strip.columns }, (_, column) => as(across, (column + 0.5) * strip.stepMm - 8));
  return { core: CORE.map(line), beside: BESIDE.map(line) };
};

describe('something that goes on beside the rod', () => {
  const orange = cell([1.4, 0.9]);
  const gray = (across: number) => (Math.abs(across) < 1 ? cell([0, 0]) : cell([-0.1, -0.2]));
  /** 10 mm wide, its middle at 20 mm, where it lies over the rod and to its two sides. */
  const hose = (slope: number, there: (across: number) => boolean) =>
    carryOn(
      strip,
      edges,
      mapOf((across, alongMm) =>
        there(across) && Math.abs(alongMm - 20 - slope * across * HALF_MM) < 5 ? orange : gray(across),
      ),
    )[columnOf(strip, 20)] as number;

  test.each([0, 0.44, -1.1])(
    'a hose crosses at slope %d: all of what is 1 apart but its own share',
    (slope) => {
      expect(hose(slope, () => true)).toBeCloseTo(1 - 40 / 264, 1);
    },
  );

  test('a band does not, nor what lies on one side alone', () => {
    expect(hose(0, (across) => Math.abs(across) < 1)).toBeLessThan(0.05);
    expect(hose(0, (across) => across < 1)).toBeLessThan(0.05);
  });

  test('where all looks alike nothing is told', () => {
    expect(
      Math.max(
        ...carryOn(
          strip,
          edges,
          mapOf(() => orange),
        ),
      ),
    ).toBeCloseTo(0, 9);
  });
});

describe('shading', () => {
  const along = (as: (across: number, alongMm: number) => number) =>
    shadedAlong(
      shadingOf(
        strip,
        edges,
        mapOf((across, mm) => cell([0, 0], as(across, mm))),
      ),
      columnOf(strip, 5),
      columnOf(strip, 25),
    );
  const round = (off: number) => 0.05 + 0.4 * Math.sqrt(Math.max(0, 1 - off * off));

  test('of a rod lies across it, of a hose over it along it', () => {
    expect(along((across) => round(across))).toBeCloseTo(-1, 2);
    expect(along((_, mm) => round((mm - 15) / 12))).toBeCloseTo(1, 2);
    expect(Math.abs(along(() => 0.2))).toBeLessThan(1e-9);
  });

  test('is that of the rod past it, or is not', () => {
    const lines = (of: (across: number) => number) => CORE.map((across) => [cell([0, 0], of(across))]);
    const up = lines((across) => Math.exp(across));
    expect(shadedAlike(up, up)).toBeCloseTo(1, 6);
    expect(
      shadedAlike(
        up,
        lines((across) => Math.exp(-across)),
      ),
    ).toBeCloseTo(-1, 2);
    expect(
      shadedAlike(
        up,
        CORE.map(() => []),
      ),
    ).toBe(0);
  });
});
