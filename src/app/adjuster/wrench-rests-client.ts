import type { Result } from '../../basics/result.ts';
import type { WrenchClip, WrenchClipFailure } from '../../measurement/wrench-clip.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import type { WrenchTrack } from './wrench-track.ts';

export type RestsQuestion = WrenchTrack & { readonly ticksPerSecond: number };
export type RestsAnswer = Result<WrenchClip, WrenchClipFailure>;

export const wrenchRestsApart = (question: RestsQuestion, signal: AbortSignal): Promise<RestsAnswer> =>
  askOnce<RestsQuestion, RestsAnswer>(
    () => new Worker(new URL('./wrench-rests.worker.ts', import.meta.url), { type: 'module' }),
    question,
    signal,
  );
