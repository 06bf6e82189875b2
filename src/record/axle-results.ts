/** The axles of the plan with what stands at their ends. */
import type { WithU } from '../measurement/measured.ts';
import { K95 } from '../measurement/measured-from.ts';
import { type AxleEnd, type AxleNote, axleNotes } from './axle-notes.ts';
import { type Difference, differenceOf } from './purpose-results.ts';
import type { InspectionRecord } from './record.ts';
import type { AxleKind } from './vehicle.ts';
import type { WheelEnd } from './wheel-end.ts';
import { holdingResults, type JudgedWheelEnd, type WheelEndResults } from './wheel-end-results.ts';

export type AxleResults = {
  /** From 1, from the front. */
  readonly axle: number;
  readonly kind: AxleKind | null;
  readonly left: WheelEndResults | null;
  readonly right: WheelEndResults | null;
  /** Stroke left minus right, of what holds now at each end. */
  readonly leftMinusRightMm: Difference | null;
  readonly notes: readonly AxleNote[];
};

export function axleResults(
  { vehicle }: InspectionRecord,
  wheelEnds: readonly WheelEndResults[],
  notes: readonly (readonly AxleNote[])[],
): AxleResults[] {
  return vehicle.axles.map(({ kind }, i) => {
    const [left, right] = [endAt(wheelEnds, i + 1, 'left'), endAt(wheelEnds, i + 1, 'right')];
    const [leftMm, rightMm] = [left, right].map((end) => end && holdingResults(end).strokeMm);
    const leftMinusRightMm = leftMm && rightMm ? differenceOf(leftMm, rightMm) : null;
    return { axle: i + 1, kind, left, right, leftMinusRightMm, notes: notes[i] ?? [] };
  });
}

/** The notes of each axle, from the front. */
export function notesByAxle(record: InspectionRecord, judged: readonly JudgedWheelEnd[]): AxleNote[][] {
  return record.vehicle.axles.map(({ kind }, i) => {
    const [left, right] = (['left', 'right'] as const).map((side) => {
      const end = endAt(judged, i + 1, side);
      return end && axleEnd(end, record);
    });
    return axleNotes(kind, left ?? null, right ?? null);
  });
}

function endAt<End extends JudgedWheelEnd>(
  ends: readonly End[],
  axle: number,
  side: 'left' | 'right',
): End | null {
  return ends.find(({ position }) => position.axle === axle && position.side === side) ?? null;
}

function axleEnd(judged: JudgedWheelEnd, { wheelEnds }: InspectionRecord): AxleEnd {
  const wheelEnd = wheelEnds.find(({ id }) => id === judged.id);
  return {
    chamber: wheelEnd?.chamber ?? null,
    armLengthMm: wheelEnd ? armLength(judged, wheelEnd) : null,
    strokeMm: holdingResults(judged).strokeMm,
    isOver: judged.state === 'over limit',
  };
}

/** As measured, else as somebody read it off the arm. */
function armLength(results: JudgedWheelEnd, wheelEnd: WheelEnd): WithU | null {
  for (const { measurement } of [holdingResults(results), results.asFound]) {
    const measured = measurement?.assessment?.measurement;
    if (measured?.ok && measured.value.sizes.armLengthMm) return measured.value.sizes.armLengthMm;
  }
  const read = wheelEnd.measurements.findLast(({ references }) => references.armLength)?.references.armLength;
  return read ? { value: read.lengthMm, u: read.uLengthMm, U95: K95 * read.uLengthMm } : null;
}
