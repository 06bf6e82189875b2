/** What a followed clip tells beyond two pictures: the stroke and the arm's angle in every frame, each application, its times. */
import type { FollowedKind } from '../marks/track.ts';
import type { BrakeState } from '../marks/view.ts';
import type { Measured } from './measured.ts';
import type { StrokeDrawing } from './measurement.ts';

export type Uncertain = { readonly value: number; readonly u: number };

/** One frame; null in a gap. u: of this frame alone, without what all frames share (scale, direction of view). */
export type CurvePoint = {
  readonly timeS: number;
  /** From the released place, along the chamber axis, mm. */
  readonly stroke: Uncertain | null;
  /** Between rod and arm at the pin; null also where no camshaft end was marked. */
  readonly armAngleRad: Uncertain | null;
};

/** released and held: at rest, without and with air. Frames are counted from the track's first; both ends belong to it. */
export const PHASE_KINDS = ['released', 'applying', 'held', 'releasing'] as const;
export type PhaseKind = (typeof PHASE_KINDS)[number];
export type Phase = {
  readonly kind: PhaseKind;
  readonly from: number;
  readonly to: number;
};

/** Times as the clip's clock has them: a slow-motion file's clock lies. null where the clip does not show it. */
export type Application = {
  readonly phases: readonly Phase[];
  /** Mean of the held frames less mean of the released ones, mm, with all there is of uncertainty. */
  readonly strokeMm: Measured;
  readonly toNinetyPercentS: Uncertain | null;
  readonly toFullS: Uncertain | null;
  readonly releaseS: Uncertain | null;
  /** Travel per second while held, mm/s; outwards positive. */
  readonly creepMmPerS: Uncertain | null;
};

export type ClipMeasurement = {
  readonly curve: readonly CurvePoint[];
  /** How the stroke so far lies on each frame; null where the pin is not seen. */
  readonly drawings: readonly (StrokeDrawing | null)[];
  readonly applications: readonly Application[];
  /** Which of them the applied view is a frame of: the stroke of the views is of that one. null: of none. */
  readonly pictured: number | null;
  /** Another one by more than little is longer, counted as those; null where none is. */
  readonly longer: number | null;
  /** Between the applications, mm, where there is more than one: largest less smallest. */
  readonly spreadMm: Uncertain | null;
  /** Where the arm passes square to the rod: stroke and time of the first passing; null where it does not, or no arm is marked. */
  readonly square: { readonly timeS: number; readonly strokeMm: Uncertain } | null;
  /** What stands still scatters about the camera's own motion by this, in units of what was stated: 1 as it should be. More: rolling
   * shutter, the phone's own steadying, or something that did not stand still. */
  readonly stillScatter: number;
  /** Frames where a person showed where things are, counted from the track's first; the first one is the seed. */
  readonly marked: readonly number[];
  readonly gaps: readonly {
    readonly kind: FollowedKind;
    readonly from: number;
    readonly to: number;
  }[];
  readonly warnings: readonly ClipWarning[];
};

export type ClipWarning =
  /** With a tape as the scale: seen from one place its depth stays open, and U is wide for that. */
  | { readonly code: 'clip/little-sway'; readonly swayMm: number }
  | { readonly code: 'clip/picture-warps'; readonly stillScatter: number }
  | { readonly code: 'clip/clock-doubtful'; readonly framesPerSecond: number }
  | { readonly code: 'clip/applications-differ'; readonly spreadMm: number };

export type ClipFailure =
  /** The rod stays where it is: never applied, or applied all through. */
  | { readonly code: 'clip/no-application'; readonly travelPx: number; readonly uPx: number }
  | { readonly code: 'clip/pin-lost'; readonly seen: number; readonly frames: number }
  /** Too few things that stand still are seen in both pictures. */
  | { readonly code: 'clip/few-still'; readonly found: number; readonly needed: number }
  /** The marked frame is not at rest in its own state: the brake moves there, or is in the other state; null: it is not seen there. */
  | { readonly code: 'clip/seed-elsewhere'; readonly state: BrakeState; readonly phase: PhaseKind | null }
  /** The clip shows the brake at rest in one state only. */
  | { readonly code: 'clip/one-state'; readonly phase: PhaseKind }
  | { readonly code: 'clip/too-short'; readonly frames: number; readonly needed: number };
