/**
 * What one wheel end came to for one purpose, as found or after repair: by pictures, by hand, and which of the two decides.
 *
 * Rule     the last measurement and the last hand reading count; which of the two decides: deciding.ts.
 * Model    power stroke = stroke - free stroke: of one adjustment its own derived quantity, else u^2 = u_stroke^2 + u_free^2;
 *          difference = pictures - hand, u^2 = u_pictures^2 + u_hand^2, significant where it exceeds its own U95.
 */
import type { Finding } from '../finding/decision.ts';
import type { WithU } from '../measurement/measured.ts';
import { minus } from '../measurement/minus.ts';
import { decidingOf, type HandStroke } from './deciding.ts';
import { type HandResult, handResult, type Rules } from './hand-results.ts';
import type { MeasurementInput, Purpose } from './measurement-input.ts';
import type { Assessment } from './results.ts';
import type { WheelEnd } from './wheel-end.ts';

export const WHEEL_END_STATES = [
  'not-started',
  'begun',
  'within limit',
  'over limit',
  'not decided',
] as const;
export type WheelEndState = (typeof WHEEL_END_STATES)[number];

export type Basis = 'pictures' | 'hand';

export type Based = WithU & { readonly basis: Basis };

export type Difference = WithU & {
  /** Larger than its own U95. */
  readonly significant: boolean;
};

export type PurposeResults = {
  readonly purpose: Purpose;
  /** The last measurement; its assessment is null while it is under way. */
  readonly measurement: { readonly id: string; readonly assessment: Assessment | null } | null;
  /** All hand readings of this purpose, as entered. */
  readonly handReadings: readonly HandResult[];
  readonly state: WheelEndState;
  /** What the state rests on; null where there is no stroke. */
  readonly basis: Basis | null;
  /** The stroke and the finding that the state rests on. */
  readonly strokeMm: Based | null;
  readonly finding: Finding | null;
  /** Pictures minus hand, of the last of each. */
  readonly differenceMm: Difference | null;
  readonly freeStrokeMm: Based | null;
  readonly powerStrokeMm: Based | null;
  /** Pictures and hand reading contradict each other. */
  readonly contradicted: boolean;
};

export type AssessMeasurement = (wheelEnd: WheelEnd, measurement: MeasurementInput) => Assessment | null;

export function purposeResults(
  wheelEnd: WheelEnd,
  purpose: Purpose,
  rules: Rules,
  assess: AssessMeasurement,
): PurposeResults {
  const measurement = lastOf(wheelEnd, purpose);
  const assessment = measurement && assess(wheelEnd, measurement);
  const measured = assessment?.measurement.ok ? assessment.measurement.value : null;
  const handReadings = wheelEnd.handReadings
    .filter((reading) => reading.purpose === purpose)
    .map((reading) => handResult(reading, rules));
  const hand = lastRead(handReadings, 'stroke');
  const pictures = measured && { ...withU(measured.strokeMm), basis: 'pictures' as const };
  const differenceMm = pictures && hand && differenceOf(pictures, hand.length);
  const decided = decidingOf(assessment, hand, differenceMm?.significant ?? false);
  const strokeMm = decided.basis === 'hand' ? (hand?.length ?? null) : pictures;
  const freeByHand = lastRead(handReadings, 'free-stroke')?.length ?? null;
  const freeStrokeMm = measured?.freeStrokeMm
    ? { ...withU(measured.freeStrokeMm), basis: 'pictures' as const }
    : freeByHand;
  const apart = strokeMm && freeStrokeMm && { ...minus(strokeMm, freeStrokeMm), basis: strokeMm.basis };
  const together = strokeMm?.basis === 'pictures' ? (measured?.powerStrokeMm ?? null) : null;
  return {
    purpose,
    measurement: measurement && { id: measurement.id, assessment },
    handReadings,
    ...decided,
    state: decided.finding?.outcome ?? stateWithout(wheelEnd, purpose),
    strokeMm,
    differenceMm,
    freeStrokeMm,
    powerStrokeMm: together ? { ...withU(together), basis: 'pictures' } : apart,
  };
}

export function differenceOf(a: WithU, b: WithU): Difference {
  const difference = minus(a, b);
  return { ...difference, significant: Math.abs(difference.value) > difference.U95 };
}

function lastRead(readings: readonly HandResult[], quantity: HandResult['quantity']): HandStroke | null {
  for (const { length, finding, quantity: of } of readings.toReversed())
    if (of === quantity && length.ok) return { length: { ...withU(length.value), basis: 'hand' }, finding };
  return null;
}

/** A measurement without any picture yet does not put aside the one before it. */
function lastOf({ measurements }: WheelEnd, purpose: Purpose): MeasurementInput | null {
  const ofPurpose = measurements.filter((one) => one.purpose === purpose);
  return ofPurpose.findLast(({ views }) => views.length > 0) ?? ofPurpose.at(-1) ?? null;
}

function stateWithout(wheelEnd: WheelEnd, purpose: Purpose): WheelEndState {
  const { measurements, handReadings, otherReadings } = wheelEnd;
  const entered =
    measurements.some((one) => one.purpose === purpose && one.views.length > 0) ||
    [...handReadings, ...otherReadings].some((reading) => reading.purpose === purpose);
  return entered ? 'begun' : 'not-started';
}

function withU({ value, u, U95 }: WithU): WithU {
  return { value, u, U95 };
}
