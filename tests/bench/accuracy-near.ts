/** Findings close to the limit: how often an over-limit stroke is called within, against what the stated u lets expect. */
import { z } from 'zod';
import { normalCdf } from '../../src/basics/normal.ts';
import { drawFrom } from '../../src/basics/random.ts';
import { GUARD_FACTOR, type Outcome } from '../../src/finding/guard-band.ts';
import { type Case, LIMIT_MM } from './accuracy-case.ts';
import { allCells, type Cell, nameOf } from './accuracy-cells.ts';

export const NEAR_MM = 6;
const EDGES_MM = [-6, -4, -2, -1, 0, 1, 2, 4, 6] as const;

const binSchema = z.strictObject({
  /** True stroke less the limit. */
  fromMm: z.number(),
  toMm: z.number(),
  cases: z.number(),
  refused: z.number(),
  calledWithin: z.number(),
  expectedWithin: z.number(),
  calledOver: z.number(),
  expectedOver: z.number(),
});

export const nearCellSchema = z.strictObject({
  name: z.string(),
  reference: z.string(),
  way: z.enum(['plain', 'careful', 'calibrated']),
  bins: z.array(binSchema),
  /** The largest excess over the limit that was called within, mm; 0 for none. */
  worstOverMm: z.number(),
});

export type NearCell = z.infer<typeof nearCellSchema>;

/** The plain way, in which u is largest and most is near. An arm length or a distance alone are left out: most of theirs is not
 * decided anywhere, and each takes as long as ten others. */
export function nearCells(): readonly Cell[] {
  return allCells().filter(
    ({ way, reference }) => way === 'plain' && reference !== 'arm-length' && reference !== 'distance',
  );
}

export function nearStrokeMm(seed: number): number {
  return LIMIT_MM + drawFrom(seed + 900_000_001).uniform(-NEAR_MM, NEAR_MM);
}

/**
 * Expected: the measured value is normal about the true stroke T with the u stated in that case, so that
 * P(within) = Phi((L - k u - T) / u), P(over) = 1 - Phi((L + k u - T) / u); nothing where no finding is ever given.
 */
export function nearCellOf(cell: Cell, cases: readonly Case[]): NearCell {
  const bins = EDGES_MM.slice(1).map((toMm, i) => {
    const fromMm = EDGES_MM[i] as number;
    const these = cases.filter((c) => c.strokeMm - LIMIT_MM > fromMm && c.strokeMm - LIMIT_MM <= toMm);
    const measured = these.flatMap(({ measured: m, strokeMm }) =>
      'refused' in m ? [] : [{ ...m, overMm: strokeMm - LIMIT_MM }],
    );
    const decided = measured.filter(({ neverDecided }) => !neverDecided);
    const called = (outcome: Outcome) => measured.filter((m) => m.outcome === outcome).length;
    return {
      fromMm,
      toMm,
      cases: these.length,
      refused: these.length - measured.length,
      calledWithin: called('within limit'),
      expectedWithin: sum(decided.map(({ overMm, uMm }) => normalCdf(-overMm / uMm - GUARD_FACTOR))),
      calledOver: called('over limit'),
      expectedOver: sum(decided.map(({ overMm, uMm }) => 1 - normalCdf(-overMm / uMm + GUARD_FACTOR))),
    };
  });
  const excesses = cases.flatMap(({ measured: m, strokeMm }) =>
    'refused' in m || m.outcome !== 'within limit' ? [] : [strokeMm - LIMIT_MM],
  );
  const { reference, way } = cell;
  return { name: nameOf(cell), reference, way, bins, worstOverMm: Math.max(0, ...excesses) };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
