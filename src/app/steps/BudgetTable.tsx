import type { Measured } from '../../measurement/measured.ts';
import { BUDGET, BUDGET_NAMES } from '../words/uncertainty.ts';
import { uText } from '../words/values.ts';

const BAR_WIDTH = 100;
/** What contributes less than this share of u squared is too short to draw. */
const LEAST_SHARE = 0.02;

/** Where the uncertainty comes from: each bar is its group's share of u squared, so that the bars add up to the whole. */
export function BudgetTable({ strokeMm }: { readonly strokeMm: Measured }) {
  const shares = strokeMm.budget
    .map(({ group, u }) => ({ group, u, share: (u / strokeMm.u) ** 2 }))
    .filter(({ share }) => share >= LEAST_SHARE)
    .toSorted((a, b) => b.share - a.share);
  return (
    <figure className="budget">
      <figcaption>{BUDGET.caption}</figcaption>
      <ul>
        {shares.map(({ group, u, share }) => (
          <li key={group}>
            <span>{BUDGET_NAMES[group]}</span>
            <span className="budget-share">
              <strong>{BUDGET.share(share)}</strong> <span className="quiet">{uText(u)}</span>
            </span>
            <svg viewBox={`0 0 ${BAR_WIDTH} 10`} preserveAspectRatio="none" aria-hidden="true">
              <rect className="whole" width={BAR_WIDTH} height="10" />
              <rect width={BAR_WIDTH * share} height="10" />
            </svg>
          </li>
        ))}
      </ul>
      <p className="quiet">{BUDGET.note}</p>
    </figure>
  );
}
