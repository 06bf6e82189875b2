/** The truth of a rendered set, as its truth.json holds it. */
import { readFileSync } from 'node:fs';
import type { BrakeState } from '../../src/marks/view.ts';

type Px = readonly [xPx: number, yPx: number];
type Point = { readonly px: Px };

export type DemoView = {
  readonly state: BrakeState;
  readonly file: string;
  readonly points: {
    readonly chamberFace: Point;
    readonly clevisPin: Point;
    readonly camshaftEnd: Point;
    readonly rodLine: readonly Point[];
    readonly tapeGraduations?: readonly (Point & { readonly inches: number })[];
    readonly clampBand: readonly (Point & { readonly visible: boolean })[];
  };
};

export type DemoTruth = {
  readonly strokeMm: number;
  readonly freeStrokeMm?: number;
  readonly armAngleReleasedDeg: number;
  readonly armAngleAppliedDeg: number;
  readonly views: readonly DemoView[];
};

export const SAMPLE_MEDIA = 'sample-media';

export function truthOf(set: string): DemoTruth {
  return JSON.parse(readFileSync(`${SAMPLE_MEDIA}/${set}/truth.json`, 'utf8'));
}
