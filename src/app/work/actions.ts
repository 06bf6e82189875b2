/** Everything that can be entered, as data. Each kind has one pure function in this folder that carries it out. */
import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Chamber } from '../../finding/chamber.ts';
import type { Frame } from '../../frames/frame.ts';
import type { Mark } from '../../marks/mark.ts';
import type { PlacedPoint } from '../../marks/placement.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import type { MeasurementInput, OverStrokeSight, WheelEnd } from '../../record/record.ts';
import type { References } from '../../references/reference.ts';

/** A view is one of at most three of a measurement, so its state names it. */
type ViewAction =
  | {
      readonly type: 'take-view';
      readonly state: BrakeState;
      readonly captureId: string;
      readonly frame: Frame | null;
    }
  | { readonly type: 'drop-view'; readonly state: BrakeState }
  | { readonly type: 'swap-views' };

export type MarkAction =
  | { readonly type: 'place-mark'; readonly state: BrakeState; readonly mark: Mark }
  | {
      readonly type: 'move-mark';
      readonly state: BrakeState;
      readonly markId: string;
      readonly point: PlacedPoint;
    }
  /** The printed target's corners as found, in place of any found before. */
  | { readonly type: 'place-target'; readonly state: BrakeState; readonly marks: readonly Mark[] }
  | { readonly type: 'delete-mark'; readonly state: BrakeState; readonly markId: string }
  | {
      readonly type: 'set-reading';
      readonly state: BrakeState;
      readonly markId: string;
      readonly readingMm: number;
    };

type OverStrokeState = 'released' | 'applied';

type PlacedTie = PlacedPoint & { readonly id: string };

/** Tie points as found in two pictures, in place of any found before. */
export type PlaceTies = {
  readonly type: 'place-ties';
  readonly first: BrakeState;
  readonly second: BrakeState;
  readonly ties: readonly { readonly first: PlacedTie; readonly second: PlacedTie }[];
};

export type MeasurementAction =
  | ViewAction
  | MarkAction
  | PlaceTies
  | { readonly type: 'set-references'; readonly references: Partial<References> }
  /** What came of following a clip: the views as it leaves them, and the track. */
  | {
      readonly type: 'take-followed';
      readonly views: readonly View[];
      readonly followed: NonNullable<MeasurementInput['followed']>;
    }
  | { readonly type: 'set-camera-still'; readonly cameraStill: boolean }
  | {
      readonly type: 'set-over-stroke';
      readonly state: OverStrokeState;
      readonly sight: OverStrokeSight | null;
    };

export type RecordAction =
  | { readonly type: 'set-unit'; readonly unit: string }
  | { readonly type: 'set-position'; readonly position: WheelEnd['position'] }
  | { readonly type: 'set-chamber'; readonly chamber: Chamber | null }
  | { readonly type: 'add-capture'; readonly capture: Capture }
  /** For the measurement at hand; null: none. */
  | { readonly type: 'set-camera-profile'; readonly profile: CameraProfile | null };

export type Action = RecordAction | MeasurementAction;

/** Which wheel end of the record, and which of its measurements, an action speaks of. */
export type Target = { readonly wheelEndId: string; readonly measurementId: string };
