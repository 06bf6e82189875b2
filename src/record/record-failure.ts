import type { BrakeState } from '../marks/view.ts';

/** Why a text is no record that can be relied on. A path names the place as in `wheelEnds[0].measurements[1].id`. */
export type RecordFailure =
  | { readonly code: 'record/too-large'; readonly characters: number; readonly limit: number }
  | { readonly code: 'record/too-deep'; readonly limit: number }
  | { readonly code: 'record/not-json' }
  | { readonly code: 'record/other-format' }
  | { readonly code: 'record/unknown-version' }
  | { readonly code: 'record/newer-version'; readonly version: number; readonly newest: number }
  | { readonly code: 'record/invalid'; readonly path: string; readonly problem: Problem }
  | { readonly code: 'record/unknown-key'; readonly path: string; readonly key: string }
  | { readonly code: 'record/too-many-faults' }
  | { readonly code: 'record/duplicate-id'; readonly path: string; readonly id: string }
  | { readonly code: 'record/position-twice'; readonly path: string }
  /** A wheel end on an axle that the vehicle does not have. */
  | { readonly code: 'record/axle-missing'; readonly path: string; readonly axle: number }
  | { readonly code: 'record/state-twice'; readonly path: string; readonly state: BrakeState }
  | { readonly code: 'record/capture-missing'; readonly path: string; readonly captureId: string }
  | { readonly code: 'record/profile-missing'; readonly path: string; readonly cameraProfileId: string }
  /** A followed mark names a mark of the measurement that is not there. */
  | { readonly code: 'record/seed-missing'; readonly path: string; readonly id: string }
  /** Columns of a track that are not as long as its list of times, or hold a place of half a value. */
  | { readonly code: 'record/track-uneven'; readonly path: string }
  /** A clip has its clock and a view of it a frame; a photo has neither. */
  | {
      readonly code:
        | 'record/clip-without-clock'
        | 'record/photo-with-clock'
        | 'record/clip-without-frame'
        | 'record/photo-with-frame';
      readonly path: string;
    }
  | {
      readonly code: 'record/frame-outside-clip';
      readonly path: string;
      readonly index: number;
      readonly frameCount: number;
    };

export type Problem = 'missing' | 'wrong-kind' | 'too-small' | 'too-large' | 'not-one-of' | 'wrong-form';
