/** The study's own arithmetic: a comparison is worth what its yardstick is worth. */
import { describe, expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { judge } from '../../src/finding/guard-band.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { type Case, LIMIT_MM } from './accuracy-case.ts';
import { nearCellOf } from './accuracy-near.ts';
import { quantile } from './accuracy-summary.ts';
import { twoPointStrokeMm } from './accuracy-two-point.ts';

const CELL = { reference: 'tape', way: 'plain', sigmaPx: 1, cameraStill: false } as const;

describe('the two-point scale', () => {
  // Seen square on, at 2 px/mm released and 4 px/mm applied: face to pin 100 and 150 mm.
  const views = (marks: (pxPerMm: number) => readonly Mark[]): MeasureInput['views'] =>
    (
      [
        ['released', 2, 100],
        ['applied', 4, 150],
      ] as const
    ).map(([state, pxPerMm, reachMm]) => ({
      state,
      captureId: state,
      frame: null,
      marks: [
        mark({ kind: 'chamber-face' }, 10, 10),
        mark({ kind: 'clevis-pin' }, 10 + pxPerMm * reachMm - 3, 10),
        mark({ kind: 'clevis-pin' }, 10 + pxPerMm * reachMm + 3, 10),
        ...marks(pxPerMm),
      ],
    }));

  test('is right where nothing is tilted or at another depth', () => {
    const graduations = (pxPerMm: number) =>
      [25.4, 50.8, 127].map((readingMm) =>
        mark({ kind: 'tape-graduation', readingMm }, 10 + pxPerMm * readingMm, 40),
      );
    const tape = { zeroAtFace: true, unmoved: false, touchesPin: false };
    expect(twoPointStrokeMm(inputOf(views(graduations), { ...NO_REFERENCES, tape }))).toBeCloseTo(50, 9);
  });

  test('takes the size of the print from its check line', () => {
    const corners = (pxPerMm: number) => [
      mark({ kind: 'target-corner', marker: 0, corner: 0 }, 50, 50),
      mark({ kind: 'target-corner', marker: 5, corner: 1 }, 50 + pxPerMm * 184 * 0.9, 50),
    ];
    const target = { checkMm: 90, uCheckMm: 0.3, unmoved: false, touchesPin: false };
    expect(twoPointStrokeMm(inputOf(views(corners), { ...NO_REFERENCES, target }))).toBeCloseTo(50, 9);
  });
});

test('near the limit, normal errors give the count that is expected', () => {
  const draw = drawFrom(5);
  const cases = Array.from({ length: 20_000 }, (_v, seed): Case => {
    const [overMm, uMm] = [draw.uniform(-6, 6), draw.uniform(0.2, 2)];
    const errorMm = draw.normal(0, uMm);
    const strokeMm = LIMIT_MM + overMm;
    const { outcome } = judge(strokeMm + errorMm, uMm, LIMIT_MM);
    const measured = {
      ...{ errorMm, uMm, UMm: 1.96 * uMm, angleErrorRad: null, angleURad: null, outcome },
      ...{ neverDecided: false, pValue: 0.5, shares: {}, solvedMs: 1 },
    };
    return { seed, strokeMm, offSquareRad: 0, twoPointErrorMm: 0, measured };
  });
  const { bins } = nearCellOf(CELL, cases);
  expect(bins.reduce((sum, bin) => sum + bin.cases, 0)).toBe(20_000);
  for (const bin of bins) {
    expect(Math.abs(bin.calledWithin - bin.expectedWithin)).toBeLessThan(
      4 * Math.sqrt(bin.expectedWithin + 1),
    );
    expect(Math.abs(bin.calledOver - bin.expectedOver)).toBeLessThan(4 * Math.sqrt(bin.expectedOver + 1));
  }
  expect(bins.find(({ fromMm }) => fromMm === 0)?.calledWithin).toBeGreaterThan(5);
});

test('a quantile is one of the values, and no fewer than its share lie at or below it', () => {
  const values = Array.from({ length: 40 }, (_v, i) => 40 - i);
  expect(quantile(values, 0.95)).toBe(38);
  expect(quantile(values, 1)).toBe(40);
  expect(quantile([7], 0.95)).toBe(7);
});

function mark(
  what:
    | { readonly kind: 'chamber-face' | 'clevis-pin' }
    | { readonly kind: 'tape-graduation'; readonly readingMm: number }
    | { readonly kind: 'target-corner'; readonly marker: number; readonly corner: number },
  xPx: number,
  yPx: number,
): Mark {
  return { ...what, id: `${xPx}-${yPx}`, xPx, yPx, sigmaPx: 1, placedBy: 'hand' };
}

function inputOf(views: MeasureInput['views'], references: References): MeasureInput {
  return { views, sideViews: [], references, captures: [], cameraStill: false, cameraProfile: null };
}
