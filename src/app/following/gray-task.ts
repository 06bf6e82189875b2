/** What the following worker asks of the one that decodes for it, and what that says. */
import type { Gray } from '../../vision/gray.ts';
import type { FollowerFailure } from './follow-task.ts';

/** Frames from `from` to before `to`. */
export type Stretch = { readonly from: number; readonly to: number };

export type GrayFrame = { readonly index: number; readonly gray: Gray };

export type GrayTask = {
  readonly file: Blob;
  readonly seedIndex: number;
  /** What is wanted of the frames before the seed, and after it; `to` no more: up to the clip's end. */
  readonly before: Stretch;
  readonly after: { readonly from: number; readonly to: number | null };
};

export type GrayAsked =
  | { readonly is: 'task'; readonly task: GrayTask }
  /** Looked at: its bytes may be filled anew. */
  | { readonly is: 'seen'; readonly bytes: ArrayBuffer };

export type GraySaid =
  /** Once, first. */
  | { readonly is: 'begun'; readonly timeTicks: readonly number[]; readonly seed: Gray }
  /** Those after the seed in order of time, those before it latest first. */
  | { readonly is: 'frame'; readonly frame: GrayFrame }
  | { readonly is: 'done' }
  | { readonly is: 'failed'; readonly failure: FollowerFailure };
