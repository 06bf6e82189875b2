/** The truth of a sample set: where the points lie on its pictures and what the stroke is. */
import { readFileSync } from 'node:fs';

export type Px = readonly [x: number, y: number];
export type FrameSize = { readonly widthPx: number; readonly heightPx: number };

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

/** The rim's visible points of the truth, 15 degrees apart, and those half way between neighbours: projected by the truth's camera. */
export function rimPoints({ points, focalPx, principalPx, cameraFromChamber }: TruthView): readonly Px[] {
  const seen = points.clampBand.filter(({ visible }) => visible);
  const between = seen.flatMap((point) => {
    const next = seen.find(({ angleDeg }) => angleDeg === (point.angleDeg + 15) % 360);
    if (!next) return [];
    const [x, y, z] = [0, 1, 2].map((i) => ((point.mm[i] ?? 0) + (next.mm[i] ?? 0)) / 2) as [
      number,
      number,
      number,
    ];
    // The middle of a chord, moved out to the circle.
    const out = 1 / Math.cos((7.5 * Math.PI) / 180);
    const at = cameraFromChamber.map(([a, b, c, t]) => a * x + b * y * out + c * z * out + t) as [
      number,
      number,
      number,
    ];
    return [
      [principalPx[0] + (focalPx * at[0]) / at[2], principalPx[1] + (focalPx * at[1]) / at[2]] as const,
    ];
  });
  return [...seen.map(({ px }) => px), ...between];
}
