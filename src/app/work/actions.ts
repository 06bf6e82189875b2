/** Everything that can be entered, as data. Each kind has one pure function in this folder that carries it out. */
import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { Capture } from '../../captures/capture.ts';
import type { CauseCheck } from '../../finding/causes.ts';
import type { Chamber } from '../../finding/chamber.ts';
import type { BandColour } from '../../finding/over-stroke-mark.ts';
import type { Frame } from '../../frames/frame.ts';
import type { Mark } from '../../marks/mark.ts';
import type { PlacedPoint } from '../../marks/placement.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import type { Conditions } from '../../record/conditions.ts';
import type { MeasurementInput, OverStrokeSight, Purpose } from '../../record/measurement-input.ts';
import type { Answer } from '../../record/parts.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Repair } from '../../record/repair.ts';
import type { AxleKind, Vehicle } from '../../record/vehicle.ts';
import type {
  HandReading,
  Identification,
  OtherReading,
  Position,
  WheelEnd,
} from '../../record/wheel-end.ts';
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
  /** Marks that assists found, in place of those of the hand that they were found near. */
  | {
      readonly type: 'take-found';
      readonly state: BrakeState;
      readonly marks: readonly Mark[];
      readonly instead: readonly string[];
    }
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
    }
  | { readonly type: 'set-band-colour'; readonly bandColour: BandColour | null };

/** Of the vehicle and the inspection as a whole. */
export type InspectionAction =
  | { readonly type: 'set-vehicle'; readonly vehicle: Partial<Omit<Vehicle, 'axles'>> }
  /** Behind the last axle, with its two wheel ends. */
  | { readonly type: 'add-axle'; readonly kind: AxleKind; readonly wheelEndIds: readonly [string, string] }
  /** At a place of the plan that has none yet. */
  | { readonly type: 'add-wheel-end'; readonly id: string; readonly position: Position }
  | { readonly type: 'set-axle-kind'; readonly axle: number; readonly kind: AxleKind }
  /** With its wheel ends; those behind it move up by one. */
  | { readonly type: 'remove-axle'; readonly axle: number }
  | { readonly type: 'set-conditions'; readonly conditions: Partial<Conditions> }
  | { readonly type: 'set-inspector'; readonly inspector: Partial<InspectionRecord['inspector']> }
  | { readonly type: 'set-review'; readonly review: InspectionRecord['review'] }
  | { readonly type: 'add-capture'; readonly capture: Capture };

/** The lists of a wheel end whose lines have ids of their own. */
export type LineOf = {
  readonly handReadings: HandReading;
  readonly otherReadings: OtherReading;
  readonly repairs: Repair;
};

type PutLine = {
  [List in keyof LineOf]: { readonly type: 'put-line'; readonly list: List; readonly line: LineOf[List] };
}[keyof LineOf];

export type WheelEndAction =
  | { readonly type: 'set-position'; readonly position: Position }
  | { readonly type: 'set-chamber'; readonly chamber: Chamber | null }
  | {
      readonly type: 'set-wheel-end';
      readonly facts: Partial<Pick<WheelEnd, 'adjuster' | 'adjusterCheck' | 'notes' | 'photos'>>;
    }
  | { readonly type: 'set-identification'; readonly identification: Partial<Identification> }
  | { readonly type: 'answer-check'; readonly check: CauseCheck; readonly answer: Answer | null }
  /** In place of the line of the same id, or as a new one. */
  | PutLine
  | { readonly type: 'drop-line'; readonly list: keyof LineOf; readonly id: string }
  | { readonly type: 'add-measurement'; readonly id: string; readonly purpose: Purpose }
  | { readonly type: 'drop-measurement'; readonly id: string };

export type RecordAction =
  | InspectionAction
  | WheelEndAction
  /** For the measurement at hand; null: none. */
  | { readonly type: 'set-camera-profile'; readonly profile: CameraProfile | null };

export type Action = RecordAction | MeasurementAction;

/** Which wheel end of the record, and which of its measurements, an action speaks of; null where it needs none. */
export type Target = { readonly wheelEndId: string | null; readonly measurementId: string | null };
