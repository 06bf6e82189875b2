/** The two ends of an axle beside each other: what the rules ask to be the same, and how far the strokes are apart. */

import { type Difference, differenceOf } from './purpose-results.ts';
import type { InspectionRecord } from './record.ts';
import type { Vehicle } from './vehicle.ts';
import { holdingResults, type WheelEndResults } from './wheel-end-results.ts';

export type AxleNote =
  | {
      readonly code: 'axle/chamber-size-differs';
      readonly left: string;
      readonly right: string;
      readonly source: string;
    }
  | { readonly code: 'axle/stroke-class-differs'; readonly source: string }
  | {
      readonly code: 'axle/arm-length-differs';
      readonly leftMm: number;
      readonly rightMm: number;
      readonly U95Mm: number;
      readonly source: string;
    };

export type AxleResults = {
  /** From 1, from the front. */
  readonly axle: number;
  readonly kind: Vehicle['axles'][number]['kind'];
  readonly left: WheelEndResults | null;
  readonly right: WheelEndResults | null;
  /** Stroke left minus right, of what holds now at each end. */
  readonly leftMinusRightMm: Difference | null;
  readonly notes: readonly AxleNote[];
};

export function axleResults(record: InspectionRecord, wheelEnds: readonly WheelEndResults[]): AxleResults[] {
  return record.vehicle.axles.map(({ kind }, i) => {
    const axle = i + 1;
    const at = (side: 'left' | 'right') =>
      wheelEnds.find(({ position }) => position.axle === axle && position.side === side) ?? null;
    const [left, right] = [at('left'), at('right')];
    const [leftMm, rightMm] = [left, right].map((end) => end && holdingResults(end).strokeMm);
    const leftMinusRightMm = leftMm && rightMm ? differenceOf(leftMm, rightMm) : null;
    return { axle, kind, left, right, leftMinusRightMm, notes: [] };
  });
}
