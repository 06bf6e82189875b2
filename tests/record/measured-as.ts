import { ok, type Result } from '../../src/basics/result.ts';
import type { Measurement, MeasurementFailure } from '../../src/measurement/measurement.ts';

/** A measurement with this stroke and nothing to say against it. */
export function measuredAs(
  strokeMm: number,
  u = 0.3,
  more: Partial<Measurement> = {},
): Result<Measurement, MeasurementFailure> {
  const stroke = { value: strokeMm, u, U95: 1.96 * u, budget: [] };
  return ok({
    strokeMm: stroke,
    straightLineChangeMm: stroke,
    freeStrokeMm: null,
    powerStrokeMm: null,
    armAngleReleasedRad: null,
    armAngleAppliedRad: null,
    sizes: { bandDiameterMm: null, armLengthMm: null },
    fit: { chiSquare: 20, degreesOfFreedom: 20, pValue: 0.46, inflation: 1, worstMark: null },
    warnings: [],
    drawings: [],
    rods: [],
    sights: [],
    ...more,
  });
}
