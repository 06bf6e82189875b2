/** One simulated wheel end through the engine, the decision and the two-point scale: what came of it, as plain numbers. */
import type { BudgetGroup } from '../../src/adjustment/budget-group.ts';
import { decide } from '../../src/finding/decision.ts';
import type { Outcome } from '../../src/finding/guard-band.ts';
import { type Limit, limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { simulate } from '../simulation/scene.ts';
import { type Cell, sceneOptions } from './accuracy-cells.ts';
import { twoPointStrokeMm } from './accuracy-two-point.ts';

export const LIMIT_MM = 50.8;

export type Case = {
  readonly seed: number;
  readonly strokeMm: number;
  /** Angle between the camera's axis and the pin's, mean of the views. */
  readonly offSquareRad: number;
  readonly twoPointErrorMm: number;
  readonly measured: MeasuredCase | { readonly refused: string };
};

export type MeasuredCase = {
  readonly errorMm: number;
  readonly uMm: number;
  readonly UMm: number;
  readonly angleErrorRad: number | null;
  readonly angleURad: number | null;
  readonly outcome: Outcome;
  /** No finding whatever the number: a distance is the only scale. */
  readonly neverDecided: boolean;
  readonly pValue: number;
  /** Share of each group in the variance of the stroke. */
  readonly shares: Readonly<Partial<Record<BudgetGroup, number>>>;
  readonly solvedMs: number;
};

export type Sample = {
  readonly seed: number;
  readonly input: MeasureInput;
  readonly truth: { readonly strokeMm: number; readonly armAngleAppliedRad: number };
  readonly offSquareRad: number;
};

export function runCase(cell: Cell, seed: number, strokeMm?: number): Case {
  const { input, truth, poses } = simulate(sceneOptions(cell, seed, strokeMm));
  const offs = poses.map(({ rows }) => Math.acos(Math.min(1, Math.abs(rows[2][2]))));
  return caseOf({ seed, input, truth, offSquareRad: offs.reduce((sum, off) => sum + off, 0) / offs.length });
}

export function caseOf({ seed, input, truth, offSquareRad }: Sample): Case {
  const common = {
    seed,
    strokeMm: truth.strokeMm,
    offSquareRad,
    twoPointErrorMm: twoPointStrokeMm(input) - truth.strokeMm,
  };
  const begun = performance.now();
  const result = measure(input);
  const solvedMs = performance.now() - begun;
  if (!result.ok) return { ...common, measured: { refused: result.failure.code } };
  const { strokeMm, armAngleAppliedRad, warnings, fit } = result.value;
  const { outcome } = decide({
    measurement: result.value,
    limit: LIMIT,
    ruleSet: US_RULE_SET,
    sights: { released: null, applied: null },
  });
  const variance = strokeMm.budget.reduce((sum, { u }) => sum + u * u, 0);
  return {
    ...common,
    measured: {
      errorMm: strokeMm.value - truth.strokeMm,
      uMm: strokeMm.u,
      UMm: strokeMm.U95,
      angleErrorRad: armAngleAppliedRad && armAngleAppliedRad.value - truth.armAngleAppliedRad,
      angleURad: armAngleAppliedRad?.U95 ?? null,
      outcome,
      neverDecided: warnings.some(({ code }) => code === 'measurement/distance-alone'),
      pValue: fit.pValue,
      shares: Object.fromEntries(strokeMm.budget.map(({ group, u }) => [group, (u * u) / variance])),
      solvedMs,
    },
  };
}

const LIMIT = limitOf30();

function limitOf30(): Limit {
  const found = limitFor(
    { family: 'clamp', type: '30', strokeClass: 'standard', ratedStrokeMm: null, markedLimitMm: null },
    US_RULE_SET,
  );
  if (!found.ok) throw new Error(found.failure.code);
  if (Math.abs(found.value.values[0].limitMm - LIMIT_MM) > 1e-9)
    throw new Error('The limit of type 30 moved');
  return found.value;
}
