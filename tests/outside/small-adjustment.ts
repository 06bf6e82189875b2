/** An adjustment with nothing in it but its equations, so that derived.ts can be asked about a published example. */
import type { Adjustment } from '../../src/adjustment/adjustment.ts';
import type { BudgetGroup } from '../../src/adjustment/budget-group.ts';
import { derivedVariance } from '../../src/adjustment/derived.ts';
import { Equations } from '../../src/adjustment/equations.ts';
import { sparseFactor } from '../../src/basics/sparse-symmetric.ts';
import type { Dual } from './dual.ts';

export type Row = { readonly d: readonly number[]; readonly residual: number; readonly group: BudgetGroup };

export function equationsOf(size: number, rows: readonly Row[]): Equations {
  const equations = new Equations(size, { rows: rows.length, entries: rows.length * size });
  for (const { d, residual, group } of rows) {
    for (const [k, value] of d.entries()) equations.add(k, value);
    equations.close(residual, group);
  }
  return equations;
}

export type Propagated = {
  readonly u: number;
  readonly byGroup: ReadonlyMap<BudgetGroup, number>;
};

/** What derived.ts says of a quantity with this gradient. */
export function propagated(equations: Equations, gradient: readonly number[]): Propagated {
  const size = equations.unknowns;
  const factor = sparseFactor(equations.normal().matrix, size);
  if (!factor) throw new Error('equations that hold every unknown');
  const adjustment = {
    layout: { size },
    best: { fitted: { equations } },
    factor,
  } as unknown as Adjustment;
  const { variance, byGroup } = derivedVariance(
    adjustment,
    gradient.map((d, index) => ({ index, d })),
  );
  return { u: Math.sqrt(variance), byGroup };
}

/** From u^2(a + b) = u^2(a) + u^2(b) + 2 r u(a) u(b). */
export function correlation(equations: Equations, a: Dual, b: Dual): number {
  const [ua, ub] = [propagated(equations, a.d).u, propagated(equations, b.d).u];
  const both = propagated(
    equations,
    a.d.map((d, i) => d / ua + (b.d[i] ?? 0) / ub),
  ).u;
  return both ** 2 / 2 - 1;
}
