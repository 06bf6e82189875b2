/**
 * From marked views to stroke, free stroke and arm angles, each with its uncertainty; or why not.
 *
 * Model    inflation of every uncertainty: sqrt(chi-square / degrees of freedom) where the chance of such a chi-square is under
 *          1 % (the marks scatter more than they said), else 1. Each quantity and its u: measured-from.ts.
 * Source   scale by the fit's own scatter: common practice of adjustment computation.
 */
import { adjust } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { profileFits } from '../adjustment/camera-prior.ts';
import { residualTest } from '../adjustment/residual-test.ts';
import { rivalShares } from '../adjustment/rival-shares.ts';
import { normalQuantile } from '../basics/normal.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import type { Measured } from './measured.ts';
import { K95, measuredFrom } from './measured-from.ts';
import type {
  Fit,
  MeasureInput,
  Measurement,
  MeasurementFailure,
  MeasurementWarning,
} from './measurement.ts';
import { pictureSight } from './picture-sight.ts';
import { problemFromViews } from './problem-from-views.ts';
import { armAngle, axialTravel, type Quantity, straightLineChange } from './quantities.ts';
import { adjustedRod } from './rod-in-picture.ts';
import { sizesFromMarks } from './sizes-from-marks.ts';
import { strokeDrawing } from './stroke-drawing.ts';
import { viewsApartRad } from './views-apart.ts';

/** Chance of a chi-square this large by luck, below which the stated mark uncertainties are not believed. */
const DISAGREEMENT = 0.01;
/** Chance that of all marks, each with two coordinates, one is named doubtful by luck. */
const DOUBTFUL_BY_LUCK = 0.04;
/** Likelihood share from which a second solution is worth telling. */
const RIVAL_SHARE = 0.02;

export function measure(input: MeasureInput): Result<Measurement, MeasurementFailure> {
  const problem = problemFromViews(input);
  if (!problem.ok) return problem;
  const adjusted = adjust(problem.value);
  if (!adjusted.ok) return fail({ code: 'measurement/no-solution' });
  return measurementOf(input, adjusted.value);
}

export function measurementOf(
  input: MeasureInput,
  adjustment: Adjustment,
): Result<Measurement, MeasurementFailure> {
  const fit = fitOf(adjustment);
  const measured = measuredFrom(adjustment, fit.inflation);
  const strokeMm = measured((x, layout) => axialTravel(x, layout, 'applied'));
  if (![strokeMm.value, strokeMm.u].every(Number.isFinite)) return fail({ code: 'measurement/no-solution' });
  if (strokeMm.value < -K95 * strokeMm.u)
    return fail({ code: 'measurement/views-swapped', strokeMm: strokeMm.value });
  const hasPulled = adjustment.layout.pins.pulled !== undefined;
  const hasArm = adjustment.layout.camshaft !== null;
  const angle = (state: 'released' | 'applied'): Measured | null =>
    hasArm ? measured((x, layout) => armAngle(x, layout, state) as Quantity) : null;
  return ok({
    strokeMm,
    straightLineChangeMm: measured(straightLineChange),
    freeStrokeMm: hasPulled ? measured((x, l) => axialTravel(x, l, 'pulled')) : null,
    powerStrokeMm: hasPulled ? measured((x, l) => axialTravel(x, l, 'applied', 'pulled')) : null,
    armAngleReleasedRad: angle('released'),
    armAngleAppliedRad: angle('applied'),
    sizes: sizesFromMarks(adjustment, fit.inflation),
    fit,
    warnings: warningsOf(input, adjustment, fit, strokeMm),
    drawings: input.views.map((_view, i) => strokeDrawing(adjustment, i)),
    rods: input.views.map((_view, i) => adjustedRod(adjustment, i)),
    sights: input.views.map((_view, i) => pictureSight(adjustment, i, strokeMm)),
  });
}

function fitOf(adjustment: Adjustment): Fit {
  const { chiSquare, degreesOfFreedom, pValue, marks } = residualTest(adjustment);
  const inflation = pValue < DISAGREEMENT ? Math.sqrt(chiSquare / degreesOfFreedom) : 1;
  const worst = marks[0];
  const state = worst ? adjustment.problem.views[worst.rows.viewIndex]?.state : undefined;
  return {
    chiSquare,
    degreesOfFreedom,
    pValue,
    inflation: Math.max(1, inflation),
    worstMark:
      worst && state
        ? {
            markId: worst.rows.mark.id,
            kind: worst.rows.mark.kind,
            state,
            standardisedResidual: worst.standardised,
          }
        : null,
  };
}

function warningsOf(
  input: MeasureInput,
  adjustment: Adjustment,
  fit: Fit,
  stroke: Measured,
): readonly MeasurementWarning[] {
  const warnings: MeasurementWarning[] = [];
  if (fit.inflation > 1)
    warnings.push({ code: 'measurement/marks-disagree', inflation: fit.inflation, pValue: fit.pValue });
  const doubtful = normalQuantile(1 - DOUBTFUL_BY_LUCK / (4 * adjustment.markRows.length));
  if (fit.worstMark && fit.worstMark.standardisedResidual > doubtful)
    warnings.push({ code: 'measurement/mark-doubtful', ...fit.worstMark });
  const used = input.captures.filter(({ id }) => input.views.some((view) => view.captureId === id));
  const profile = input.cameraProfile;
  const calibrated = used.filter((capture) => profile !== null && profileFits(capture, profile));
  if (profile && calibrated.length < used.length) warnings.push({ code: 'measurement/profile-other-size' });
  if (used.some((capture) => capture.focal35Mm === null && !calibrated.includes(capture)))
    warnings.push({ code: 'measurement/focal-length-assumed' });
  if (adjustment.layout.camshaft === null) warnings.push({ code: 'measurement/camshaft-unmarked' });
  const { tape, target, clampBand, armLength, distance } = input.references;
  if (distance && !tape && !target && !clampBand && !armLength && adjustment.problem.poseCount > 1)
    warnings.push({ code: 'measurement/distance-alone' });
  const apartRad = viewsApartRad(adjustment);
  if (apartRad !== null) warnings.push({ code: 'measurement/views-apart', apartRad });
  for (const { share, x } of rivalShares(adjustment)) {
    const otherStrokeMm = axialTravel(x, adjustment.layout, 'applied').value;
    if (share > RIVAL_SHARE && Math.abs(otherStrokeMm - stroke.value) > stroke.u / 2)
      warnings.push({ code: 'measurement/two-solutions', otherStrokeMm });
  }
  return warnings;
}
