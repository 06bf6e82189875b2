/** The truth of a sample set: where the points lie on its pictures and what the stroke is. */
import { readFileSync } from 'node:fs';
import type { FrameSize, Px } from './main-job-marking.ts';

type Point = { readonly px: Px };

export type TruthView = FrameSize & {
  readonly state: 'released' | 'applied';
  readonly frameIndex?: number;
  readonly focalPx: number;
  readonly principalPx: Px;
  /** Three rows of rotation and translation, mm. */
  readonly cameraFromChamber: readonly (readonly [number, number, number, number])[];
  readonly points: {
    readonly chamberFace: Point;
    readonly clevisPin: Point;
    readonly camshaftEnd: Point;
    readonly rodLine: readonly Point[];
    readonly tapeGraduations?: readonly (Point & { readonly inches: number })[];
    readonly clampBand: readonly (Point & {
      readonly visible: boolean;
      readonly angleDeg: number;
      readonly mm: readonly number[];
    })[];
  };
};

export type Truth = {
  readonly strokeMm: number;
  readonly armAngleReleasedDeg: number;
  readonly armAngleAppliedDeg: number;
  readonly overStrokeMark: {
    readonly released: 'seen' | 'not seen';
    readonly applied: 'seen' | 'not seen';
  };
  readonly views: readonly TruthView[];
};

const fileOf = (set: string) => `sample-media/${set}/truth.json`;

export const truthOf = (set: string): Truth => JSON.parse(readFileSync(fileOf(set), 'utf8'));

export function viewOf(truth: Truth, state: 'released' | 'applied'): TruthView {
  const view = truth.views.find((each) => each.state === state);
  if (!view) throw new Error(`no ${state} view`);
  return view;
}
