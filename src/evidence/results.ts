/**
 * The results that a package keeps beside the record, so that a recheck can disagree with them. They are what the engine gave
 * where the package was made: full precision, every quantity with its uncertainty and its budget.
 */
import { z } from 'zod';
import type { Measured } from '../measurement/measured.ts';
import { measuredRow } from '../record/measured-rows.ts';
import type { InspectionRecord } from '../record/record.ts';
import { type Assessment, assess } from '../record/results.ts';

export const RESULTS_FORMAT = 'strokewitness-results';
export const RESULTS_VERSION = 1;

const number = z.number().nullable();

const measuredSchema = z
  .strictObject({
    value: z.number(),
    u: z.number(),
    U95: z.number(),
    budget: z
      .array(z.strictObject({ group: z.string().max(40), u: z.number() }).readonly())
      .max(40)
      .readonly(),
  })
  .readonly();

export const QUANTITIES = [
  'strokeMm',
  'straightLineChangeMm',
  'freeStrokeMm',
  'armAngleReleasedRad',
  'armAngleAppliedRad',
] as const;
export type QuantityName = (typeof QUANTITIES)[number];

const quantity = measuredSchema.nullable();

const rowSchema = z
  .strictObject({
    record: z.string().max(64),
    wheelEnd: z.string().max(64),
    measurement: z.string().max(64),
    purpose: z.enum(['as-found', 'after-repair']),
    stroke_mm: number,
    U95_mm: number,
    armAngleReleased_deg: number,
    armAngleReleased_U95_deg: number,
    armAngleApplied_deg: number,
    armAngleApplied_U95_deg: number,
    freeStroke_mm: number,
    freeStroke_U95_mm: number,
    limit_mm: number,
    finding: z.enum(['within limit', 'over limit', 'not decided']),
    warnings: z.array(z.string().max(100)).max(100).readonly(),
  })
  .readonly();

const resultSchema = z
  .strictObject({
    /** As `npm run measure` prints it. */
    row: rowSchema,
    quantities: z
      .strictObject({
        strokeMm: quantity,
        straightLineChangeMm: quantity,
        freeStrokeMm: quantity,
        armAngleReleasedRad: quantity,
        armAngleAppliedRad: quantity,
      })
      .readonly()
      .nullable(),
    fit: z
      .strictObject({ chiSquare: z.number(), degreesOfFreedom: z.number(), inflation: z.number() })
      .readonly()
      .nullable(),
  })
  .readonly();

export const resultsSchema = z
  .strictObject({
    format: z.literal(RESULTS_FORMAT),
    version: z.literal(RESULTS_VERSION),
    engine: z.string().min(1).max(40),
    results: z.array(resultSchema).max(4000).readonly(),
  })
  .readonly();

export type Results = z.infer<typeof resultsSchema>;
export type RecordedResult = z.infer<typeof resultSchema>;

export function resultsOf(record: InspectionRecord, engine: string): Results {
  const results = record.wheelEnds.flatMap((wheelEnd) =>
    wheelEnd.measurements.map((measurement) => {
      const assessment = assess(record, wheelEnd, measurement);
      return { row: measuredRow(record, wheelEnd, measurement, assessment), ...numbersOf(assessment) };
    }),
  );
  return { format: RESULTS_FORMAT, version: RESULTS_VERSION, engine, results };
}

function numbersOf({ measurement }: Assessment): Pick<RecordedResult, 'quantities' | 'fit'> {
  if (!measurement.ok) return { quantities: null, fit: null };
  const { fit, strokeMm, straightLineChangeMm, freeStrokeMm, armAngleReleasedRad, armAngleAppliedRad } =
    measurement.value;
  const { chiSquare, degreesOfFreedom, inflation } = fit;
  return {
    quantities: {
      strokeMm: kept(strokeMm),
      straightLineChangeMm: kept(straightLineChangeMm),
      freeStrokeMm: kept(freeStrokeMm),
      armAngleReleasedRad: kept(armAngleReleasedRad),
      armAngleAppliedRad: kept(armAngleAppliedRad),
    },
    fit: { chiSquare, degreesOfFreedom, inflation },
  };
}

function kept(measured: Measured | null): Measured | null {
  if (!measured) return null;
  const { value, u, U95, budget } = measured;
  return { value, u, U95, budget: budget.map(({ group, u: share }) => ({ group, u: share })) };
}
