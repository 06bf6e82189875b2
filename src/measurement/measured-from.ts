/**
 * A quantity of the adjusted geometry with its uncertainty and the budget of it.
 *
 * Model    usually: u = sqrt(variance from the covariance) x inflation; a rival minimum adds w (q - q_rival)^2 with its share w:
 *          what cannot be told apart is not stated. U95 = 1.96 u.
 *          Where a direction of view is loose the covariance cannot be relied on: U95 then comes from the quantity's own
 *          distribution (marginal.ts), rivals and all; u and the budget are scaled so that they go with it.
 * Source   JCGM 100:2008, 5.2 (propagation; clause from memory).
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { derivedVariance } from '../adjustment/derived.ts';
import { hasLooseTilt } from '../adjustment/loose-tilt.ts';
import { type DerivedQuantity, distribution, halfWidth95 } from '../adjustment/marginal.ts';
import { rivalShares } from '../adjustment/rival-shares.ts';
import type { Measured } from './measured.ts';

export const K95 = 1.96;

export function measuredFrom(
  adjustment: Adjustment,
  inflation: number,
): (quantity: DerivedQuantity) => Measured {
  const loose = hasLooseTilt(adjustment);
  return (quantity) => {
    const { best, layout } = adjustment;
    const { value, gradient } = quantity(best.x, layout);
    const { variance, byGroup } = derivedVariance(adjustment, gradient);
    const rivalVariance = rivalShares(adjustment).reduce(
      (sum, { share, x }) => sum + share * (quantity(x, layout).value - value) ** 2,
      0,
    );
    const linear = Math.sqrt(variance * inflation ** 2 + rivalVariance);
    const spread = { quantity, u: Math.sqrt(variance), inflation };
    const u = loose ? halfWidth95(distribution(adjustment, spread), value) / K95 : linear;
    const budget = [...byGroup].map(([group, part]) => ({
      group,
      // A rival solution is a doubt about the direction of view: it is booked on the camera.
      u: (u / linear) * Math.sqrt(part * inflation ** 2 + (group === 'camera' ? rivalVariance : 0)),
    }));
    return { value, u, U95: K95 * u, budget };
  };
}
