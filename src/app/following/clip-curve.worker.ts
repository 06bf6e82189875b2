import { strokeOverTime } from '../../measurement/stroke-over-time.ts';
import type { ClipQuestion } from './clip-curve-client.ts';

addEventListener('message', ({ data: { input, track } }: MessageEvent<ClipQuestion>) => {
  postMessage(strokeOverTime(input, track));
});
