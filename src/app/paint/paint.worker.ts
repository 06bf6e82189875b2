/** Judges pieces of pictures, which it closes: some hundred thousand pixels each, so apart from what follows the hand. */
import { assert } from '../../basics/result.ts';
import { rgbaPicture } from '../../vision/gray-picture.browser.ts';
import { joinJudgements } from '../../vision/paint-join.ts';
import { judgePaint, NO_HINTS, type PaintJudgement } from '../../vision/paint-judge.ts';
import type { PaintAsked } from './paint-client.ts';
import type { PaintFrame } from './paint-frames.ts';

addEventListener('message', ({ data: { frames, bandColour } }: MessageEvent<PaintAsked>) => {
  const [first, ...others] = frames.map((frame) => judged(frame, bandColour));
  assert(first, 'at least the frame that was taken');
  postMessage(joinJudgements([first, ...others]));
});

function judged({ picture, box, rod }: PaintFrame, bandColour: PaintAsked['bandColour']): PaintJudgement {
  return judgePaint({ ...box, rgba: rgbaPicture(picture).rgba }, rod, { ...NO_HINTS, bandColour });
}
