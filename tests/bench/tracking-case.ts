/** What one clip gave: followed by us, followed the plain way, and what each makes of the stroke. */

import type { PageRun } from './tracking-chromium.ts';
import type { StudyClip } from './tracking-clip.ts';
import type { PlainAnswer } from './tracking-opencv.ts';
import type { Score } from './tracking-score.ts';
import type { StrokeOutcome } from './tracking-stroke.ts';

export type TrackingCase = {
  readonly clip: StudyClip;
  readonly run: PageRun | { readonly code: string };
  readonly score: Score | null;
  readonly stroke: StrokeOutcome | null;
  readonly plain: PlainAnswer | null;
};
