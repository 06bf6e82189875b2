import { clipViews } from '../../measurement/clip-views.ts';
import type { ClipQuestion } from './clip-curve-client.ts';

addEventListener('message', ({ data: { input, track } }: MessageEvent<ClipQuestion>) => {
  postMessage(clipViews(input, track));
});
