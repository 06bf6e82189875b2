/** The measurement with the larger of the stated and the trials' uncertainty in every quantity that had trials. */
import type { Measured } from './measured.ts';
import type { Measurement } from './measurement.ts';
import type { TrialResult, Trials } from './monte-carlo-joined.ts';

export function widenedBy(measurement: Measurement, { results }: Trials): Measurement {
  const { freeStrokeMm, armAngleReleasedRad, armAngleAppliedRad } = measurement;
  return {
    ...measurement,
    strokeMm: widened(measurement.strokeMm, results.strokeMm),
    freeStrokeMm: freeStrokeMm && widened(freeStrokeMm, results.freeStrokeMm),
    armAngleReleasedRad: armAngleReleasedRad && widened(armAngleReleasedRad, results.armAngleReleasedRad),
    armAngleAppliedRad: armAngleAppliedRad && widened(armAngleAppliedRad, results.armAngleAppliedRad),
  };
}

/** All in proportion, so that u, U and the budget still belong together. */
function widened(stated: Measured, trials: TrialResult | null): Measured {
  const factor = trials && stated.U95 > 0 ? trials.largerU95 / stated.U95 : 1;
  return {
    value: stated.value,
    u: stated.u * factor,
    U95: stated.U95 * factor,
    budget: stated.budget.map(({ group, u }) => ({ group, u: u * factor })),
  };
}
