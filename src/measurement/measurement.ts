/** What is measured from one set of views, and why it could not be. */
import type { CameraProfile } from '../captures/camera-profile.ts';
import type { Capture } from '../captures/capture.ts';
import type { MarkKind } from '../marks/mark.ts';
import type { BrakeState, View } from '../marks/view.ts';
import type { References } from '../references/reference.ts';
import type { Measured } from './measured.ts';
import type { Sizes } from './sizes-from-marks.ts';

export type MeasureInput = {
  readonly views: readonly View[];
  /** Further frames of a followed clip, seen from other places, with followed marks only. */
  readonly sideViews: readonly View[];
  readonly references: References;
  /** The camera stood still between the views (tripod): one pose serves all. */
  readonly cameraStill: boolean;
  readonly captures: readonly Capture[];
  readonly cameraProfile: CameraProfile | null;
};

/** A point of the picture in pixels of the upright picture. */
export type PicturePoint = readonly [xPx: number, yPx: number];

export type Measurement = {
  /** Push rod travel along the chamber axis, released to applied. */
  readonly strokeMm: Measured;
  /** Change of the straight line from face to pin, released to applied. */
  readonly straightLineChangeMm: Measured;
  /** Released to pulled, where there is a pulled view. */
  readonly freeStrokeMm: Measured | null;
  /** Pulled to applied, where there is a pulled view: stroke minus free stroke, of one adjustment. */
  readonly powerStrokeMm: Measured | null;
  /** Angle at the pin between push rod and arm, in the plane of motion; null where no camshaft end is marked. */
  readonly armAngleReleasedRad: Measured | null;
  readonly armAngleAppliedRad: Measured | null;
  /** Sizes of parts as the marks give them, to be held against what is known of the parts. */
  readonly sizes: Sizes;
  readonly fit: Fit;
  readonly warnings: readonly MeasurementWarning[];
  /** How the stroke lies on each picture, for drawing it as a dimension. */
  readonly drawings: readonly StrokeDrawing[];
  /** How the push rod lies on each picture near the chamber face. */
  readonly rods: readonly RodScale[];
  /** From where each picture was taken. */
  readonly sights: readonly PictureSight[];
};

export type PictureSight = {
  readonly state: BrakeState;
  /** Between the line of sight to the rod and the pin's own axis. */
  readonly offSquareRad: number;
  /** How far the tape or printed target lies before or behind the pin's visible end, and its hold's share of the stroke's variance. */
  readonly reference: { readonly apartMm: number; readonly share: number } | null;
};

export type RodScale = {
  readonly state: BrakeState;
  /** Unit vector along the rod, away from the chamber. */
  readonly way: PicturePoint;
  readonly pxPerMm: number;
  readonly halfWidthPx: number;
};

export type Fit = {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Probability of a chi-square at least this large if the model and the stated uncertainties hold. */
  readonly pValue: number;
  /** Factor by which the marks' disagreement has widened every uncertainty, at least 1. */
  readonly inflation: number;
  readonly worstMark: DoubtfulMark | null;
};

export type DoubtfulMark = {
  readonly markId: string;
  readonly kind: MarkKind;
  readonly state: BrakeState;
  /** Residual over its own standard deviation after the fit. */
  readonly standardisedResidual: number;
};

export type StrokeDrawing = {
  readonly state: BrakeState;
  /** Chamber axis from the face outwards, through the reach of the pin. */
  readonly axis: readonly [PicturePoint, PicturePoint];
  /** Extension lines at the released and at the applied pin, from the pin to beyond the dimension line. */
  readonly extensions: readonly [
    readonly [PicturePoint, PicturePoint],
    readonly [PicturePoint, PicturePoint],
  ];
  /** Dimension line, from the released to the applied position. */
  readonly dimension: readonly [PicturePoint, PicturePoint];
};

export type MeasurementWarning =
  | { readonly code: 'measurement/marks-disagree'; readonly inflation: number; readonly pValue: number }
  | ({ readonly code: 'measurement/mark-doubtful' } & DoubtfulMark)
  | { readonly code: 'measurement/focal-length-assumed' }
  /** The camera profile was made at another picture size than that of a picture here. */
  | { readonly code: 'measurement/profile-other-size' }
  | { readonly code: 'measurement/camshaft-unmarked' }
  /** Two hand-held pictures with one known distance as the only scale: the stated uncertainty is known to be too small there. */
  | { readonly code: 'measurement/distance-alone' }
  /** Pictures from directions far apart with nothing that ties them together. */
  | { readonly code: 'measurement/views-apart'; readonly apartRad: number }
  | { readonly code: 'measurement/two-solutions'; readonly otherStrokeMm: number };

export type MeasurementFailure =
  | { readonly code: 'measurement/view-missing'; readonly state: BrakeState }
  /** One and the same picture was taken for two states. */
  | { readonly code: 'measurement/same-picture'; readonly states: readonly [BrakeState, BrakeState] }
  | { readonly code: 'measurement/mark-missing'; readonly state: BrakeState; readonly kind: MarkKind }
  | { readonly code: 'measurement/no-scale' }
  | {
      readonly code: 'measurement/too-few-points';
      readonly kind: MarkKind;
      readonly have: number;
      readonly need: number;
    }
  | {
      readonly code: 'measurement/points-coincide';
      readonly state: BrakeState;
      readonly kinds: readonly [MarkKind, MarkKind];
    }
  | { readonly code: 'measurement/views-swapped'; readonly strokeMm: number }
  | { readonly code: 'measurement/capture-missing'; readonly captureId: string }
  | { readonly code: 'measurement/no-solution' };
