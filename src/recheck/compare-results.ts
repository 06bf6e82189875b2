/**
 * Results as recorded against results as recomputed from the recorded marks.
 *
 * Model    a number agrees if it is off by no more than its tolerance; an outcome, a limit's note, a warning must be the same.
 * Tolerance 0.001 mm and 0.001 degrees: a hundredth of the smallest uncertainty that is ever stated here, and far above what
 *          the last digits of two JavaScript engines' sines and roots come to in a fit that has converged (below 1e-6 mm seen).
 *          Chi-square and the widening: a thousandth of their value.
 */

import { QUANTITIES, type QuantityName, type RecordedResult, type Results } from '../evidence/results.ts';
import type { Measured } from '../measurement/measured.ts';
import type { ResultFault } from './difference.ts';

const TOLERANCE_MM = 0.001;
const TOLERANCE_DEG = 0.001;
const TOLERANCE_RAD = (TOLERANCE_DEG * Math.PI) / 180;
const TOLERANCE_SHARE = 1e-3;

export function resultFaults(recorded: Results, recomputed: Results): readonly ResultFault[] {
  const before = byKey(recorded);
  const now = byKey(recomputed);
  const places = new Map([...before, ...now]);
  return [...places].flatMap(
    ([
      key,
      {
        row: { wheelEnd, measurement },
      },
    ]): readonly ResultFault[] => {
      const [was, is] = [before.get(key), now.get(key)];
      if (!was) return [{ code: 'results/missing', wheelEnd, measurement }];
      if (!is) return [{ code: 'results/not-in-record', wheelEnd, measurement }];
      return differing(was, is).map((one) => ({ code: 'results/differ', wheelEnd, measurement, ...one }));
    },
  );
}

function byKey({ results }: Results): Map<string, RecordedResult> {
  return new Map(
    results.map((result) => [JSON.stringify([result.row.wheelEnd, result.row.measurement]), result]),
  );
}

type Value = number | string | null;
type Differing = { readonly quantity: string; readonly recorded: Value; readonly recomputed: Value };

function differing(was: RecordedResult, is: RecordedResult): Differing[] {
  const before = valuesOf(was);
  const now = valuesOf(is);
  return [...new Set([...before.keys(), ...now.keys()])].flatMap((quantity) => {
    const [recorded, recomputed] = [before.get(quantity) ?? null, now.get(quantity) ?? null];
    return agree(quantity, recorded, recomputed) ? [] : [{ quantity, recorded, recomputed }];
  });
}

function agree(quantity: string, a: Value, b: Value): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= toleranceOf(quantity, b);
}

function toleranceOf(quantity: string, value: number): number {
  if (/_mm$|Mm\./.test(quantity)) return TOLERANCE_MM;
  if (/_deg$/.test(quantity)) return TOLERANCE_DEG;
  if (/Rad\./.test(quantity)) return TOLERANCE_RAD;
  return TOLERANCE_SHARE * Math.abs(value);
}

/** Every value of a result by its name. */
function valuesOf({ row, quantities, fit }: RecordedResult): Map<string, Value> {
  const { warnings, ...plain } = row;
  return new Map<string, Value>([
    ...Object.entries(plain),
    ['warnings', [...warnings].sort().join(', ')],
    ...QUANTITIES.flatMap((name) => measuredValues(name, quantities?.[name] ?? null)),
    ...Object.entries(fit ?? {}).map(([name, value]): [string, Value] => [`fit.${name}`, value]),
  ]);
}

function measuredValues(name: QuantityName, measured: Measured | RecordedMeasured | null): [string, Value][] {
  if (!measured) return [];
  const { value, u, U95, budget } = measured;
  return [
    [`${name}.value`, value],
    [`${name}.u`, u],
    [`${name}.U95`, U95],
    ...budget.map((share): [string, Value] => [`${name}.budget.${share.group}`, share.u]),
  ];
}

type RecordedMeasured = NonNullable<NonNullable<RecordedResult['quantities']>[QuantityName]>;
