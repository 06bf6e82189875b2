import type { Measured } from '../../measurement/measured.ts';
import { BUDGET_NAMES, FINDING } from '../words/findings.ts';
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
    <table className="budget">
      <caption className="quiet">{FINDING.budget}</caption>
      <tbody>
        {shares.map(({ group, u, share }) => (
          <tr key={group}>
            <th scope="row">{BUDGET_NAMES[group]}</th>
            <td className="budget-bar">
              <svg viewBox={`0 0 ${BAR_WIDTH} 10`} preserveAspectRatio="none" aria-hidden="true">
                <rect width={BAR_WIDTH * share} height="10" />
              </svg>
            </td>
            <td>{uText(u)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
