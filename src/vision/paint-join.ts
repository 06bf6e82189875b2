/**
 * One judgement from several frames of a clip that show the brake in the same state.
 *
 * Model    frames that can tell vote with their confidence; paint that is there is in every frame, so at least AGREE of the votes
 *          must say the same, else the frames differ and nobody can tell
 * Assumes  neighbouring frames share light, dirt and place of the camera: their agreement makes nothing surer than its surest frame
 */
import type { PaintJudgement, PaintSight } from './paint-judge.ts';

const AGREE = 0.75;

/** The first frame is the one the person sees: its crop and, where it agrees, its reason are taken. */
export function joinJudgements(frames: readonly [PaintJudgement, ...PaintJudgement[]]): PaintJudgement {
  const [shown] = frames;
  const votes = (sight: PaintSight) =>
    frames.filter((each) => each.sight === sight).reduce((sum, { confidence }) => sum + confidence, 0);
  const [seen, not] = [votes('seen'), votes('not-seen')];
  if (seen + not === 0) return shown;
  const sight = seen > not ? 'seen' : 'not-seen';
  const share = Math.max(seen, not) / (seen + not);
  const telling = frames.filter((each) => each.sight !== 'cannot-tell');
  if (share < AGREE || telling.length < frames.length / 2)
    return {
      sight: 'cannot-tell',
      confidence: 1 - share / 2,
      reason: {
        code: 'paint/frames-differ',
        seen: frames.filter((each) => each.sight === 'seen').length,
        of: frames.length,
      },
      crop: shown.crop,
    };
  const agreeing = frames.filter((each) => each.sight === sight);
  const spoken = agreeing.includes(shown) ? shown : (agreeing[0] as PaintJudgement);
  const confidence = agreeing.reduce((sum, each) => sum + each.confidence, 0) / agreeing.length;
  return { ...spoken, confidence: confidence * share, crop: shown.crop };
}
