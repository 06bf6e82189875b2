import type { Result } from '../../basics/result.ts';
import type { ClipFailure } from '../../measurement/clip-measurement.ts';
import type { ClipViews } from '../../measurement/clip-views.ts';
import type { MeasurementFailure } from '../../measurement/measurement.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import type { ClipQuestion } from './clip-curve-client.ts';

type ViewsAnswer = Result<ClipViews, ClipFailure | MeasurementFailure>;

/** The end of a following, which nobody calls off. */
export const clipViewsApart = (question: ClipQuestion): Promise<ViewsAnswer> =>
  askOnce<ClipQuestion, ViewsAnswer>(
    () => new Worker(new URL('./clip-views.worker.ts', import.meta.url), { type: 'module' }),
    question,
    new AbortController().signal,
  );
