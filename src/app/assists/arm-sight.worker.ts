import { armSight } from '../../measurement/arm-sight.ts';
import type { ClipQuestion } from '../following/clip-curve-client.ts';

addEventListener('message', ({ data: { input, track } }: MessageEvent<ClipQuestion>) => {
  postMessage(armSight(input, track));
});
