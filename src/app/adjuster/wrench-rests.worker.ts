import { wrenchOfClip } from '../../measurement/wrench-clip.ts';
import type { RestsQuestion } from './wrench-rests-client.ts';

addEventListener('message', ({ data }: MessageEvent<RestsQuestion>) => {
  postMessage(wrenchOfClip(data.track, data.sights, data.ticksPerSecond));
});
