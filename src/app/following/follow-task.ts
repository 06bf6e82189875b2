/** What the page asks of the following worker, and what that says. */
import type { Capture } from '../../captures/capture.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FollowFailure, FollowQuestion, FrameSight } from '../../vision/follow-sight.ts';
import type { FollowState } from '../../vision/follow-state.ts';
import type { Point } from '../../vision/point.ts';

export const DIRECTIONS = ['forwards', 'backwards'] as const;
export type Direction = (typeof DIRECTIONS)[number];

export type FollowTask = {
  readonly capture: Capture;
  readonly file: Blob;
  readonly seedIndex: number;
  /** In pixels of the upright picture. */
  readonly question: FollowQuestion;
  /** Frames of the clip to look at, `to` no more; null: all. */
  readonly within: { readonly from: number; readonly to: number } | null;
  /** How many frames of each direction are followed already, and the state after them. */
  readonly from: Readonly<Record<Direction, { readonly count: number; readonly state: FollowState | null }>>;
};

export type FollowerFailure =
  | FollowFailure
  | CaptureFailure
  | { readonly code: 'follow/broke-off'; readonly detail: string }
  | { readonly code: 'follow/too-long'; readonly frameCount: number; readonly most: number };

export type FollowSaid =
  /** Once, first: what stands still, in the seed picture; how many frames there are. Places here and below are upright. */
  | { readonly is: 'begun'; readonly stills: readonly Point[]; readonly timeTicks: readonly number[] }
  | {
      readonly is: 'seen';
      readonly direction: Direction;
      readonly sights: readonly FrameSight[];
      readonly state: FollowState;
    }
  | { readonly is: 'done' }
  | { readonly is: 'failed'; readonly failure: FollowerFailure };

export function brokeOff(detail: string): FollowerFailure {
  return { code: 'follow/broke-off', detail };
}
