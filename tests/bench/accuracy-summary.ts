/** What many cases of one cell come to: the row of the table, as kept in docs/accuracy/rows.json. */
import { z } from 'zod';
import { BUDGET_GROUPS } from '../../src/adjustment/budget-group.ts';
import { degFromRad } from '../../src/basics/units.ts';
import { type Case, LIMIT_MM, type MeasuredCase } from './accuracy-case.ts';
import { type Cell, nameOf } from './accuracy-cells.ts';

const binSchema = z.strictObject({
  fromDeg: z.number(),
  toDeg: z.number(),
  cases: z.number(),
  error95Mm: z.number(),
  held: z.number(),
  twoPoint95Mm: z.number(),
});

export const rowSchema = z.strictObject({
  name: z.string(),
  reference: z.string(),
  way: z.enum(['plain', 'careful', 'calibrated']),
  sigmaPx: z.number(),
  cameraStill: z.boolean(),
  scenes: z.number(),
  refused: z.record(z.string(), z.number()),
  errorMedianMm: z.number(),
  error95Mm: z.number(),
  UMedianMm: z.number(),
  held: z.number(),
  angleError95Deg: z.number(),
  angleHeld: z.number(),
  overCalledWithin: z.number(),
  withinCalledOver: z.number(),
  notDecided: z.number(),
  twoPointMedianMm: z.number(),
  twoPoint95Mm: z.number(),
  shares: z.partialRecord(z.enum(BUDGET_GROUPS), z.number()),
  bySquareness: z.array(binSchema),
  solvedMedianMs: z.number(),
});

export type Row = z.infer<typeof rowSchema>;

/** Shares (held, notDecided, ...) are of the measured cases. */
export function rowOf(cell: Cell, cases: readonly Case[]): Row {
  const measured = cases.flatMap(({ measured: m, strokeMm }) => ('refused' in m ? [] : [{ ...m, strokeMm }]));
  const errors = measured.map(({ errorMm }) => Math.abs(errorMm));
  const angles = measured.flatMap(({ angleErrorRad: error, angleURad: U }) =>
    error === null || U === null ? [] : [{ errorRad: Math.abs(error), U }],
  );
  const twoPoint = cases.map(({ twoPointErrorMm }) => Math.abs(twoPointErrorMm));
  return {
    name: nameOf(cell),
    ...cell,
    scenes: cases.length,
    refused: counted(cases.flatMap(({ measured: m }) => ('refused' in m ? [m.refused] : []))),
    errorMedianMm: quantile(errors, 0.5),
    error95Mm: quantile(errors, 0.95),
    UMedianMm: quantile(
      measured.map(({ UMm }) => UMm),
      0.5,
    ),
    held: share(measured, ({ errorMm, UMm }) => Math.abs(errorMm) <= UMm),
    angleError95Deg: degFromRad(
      quantile(
        angles.map(({ errorRad }) => errorRad),
        0.95,
      ),
    ),
    angleHeld: share(angles, ({ errorRad, U }) => errorRad <= U),
    overCalledWithin: measured.filter((m) => m.outcome === 'within limit' && m.strokeMm > LIMIT_MM).length,
    withinCalledOver: measured.filter((m) => m.outcome === 'over limit' && m.strokeMm <= LIMIT_MM).length,
    notDecided: share(measured, ({ outcome }) => outcome === 'not decided'),
    twoPointMedianMm: quantile(twoPoint, 0.5),
    twoPoint95Mm: quantile(twoPoint, 0.95),
    shares: meanShares(measured),
    bySquareness: SQUARENESS_DEG.map(([from, to]) => binOf(cases, from, to)),
    solvedMedianMs: quantile(
      measured.map(({ solvedMs }) => solvedMs),
      0.5,
    ),
  };
}

export const SQUARENESS_DEG = [
  [0, 10],
  [10, 20],
  [20, 45],
] as const;

function binOf(cases: readonly Case[], fromDeg: number, toDeg: number): Row['bySquareness'][number] {
  const these = cases.filter(({ offSquareRad }) => {
    const deg = degFromRad(offSquareRad);
    return deg >= fromDeg && deg < toDeg;
  });
  const measured = these.flatMap(({ measured: m }) => ('refused' in m ? [] : [m]));
  return {
    fromDeg,
    toDeg,
    cases: measured.length,
    error95Mm: quantile(
      measured.map(({ errorMm }) => Math.abs(errorMm)),
      0.95,
    ),
    held: share(measured, ({ errorMm, UMm }) => Math.abs(errorMm) <= UMm),
    twoPoint95Mm: quantile(
      these.map(({ twoPointErrorMm }) => Math.abs(twoPointErrorMm)),
      0.95,
    ),
  };
}

function meanShares(measured: readonly MeasuredCase[]): Row['shares'] {
  return Object.fromEntries(
    BUDGET_GROUPS.map((group) => [
      group,
      measured.reduce((sum, { shares }) => sum + (shares[group] ?? 0), 0) / measured.length,
    ]),
  );
}

/** The smallest value that at least this share of all does not exceed. */
export function quantile(values: readonly number[], at: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(at * sorted.length) - 1)] ?? 0;
}

function share<T>(values: readonly T[], holds: (value: T) => boolean): number {
  return values.length === 0 ? 0 : values.filter(holds).length / values.length;
}

function counted(names: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const name of names) counts[name] = (counts[name] ?? 0) + 1;
  return counts;
}
