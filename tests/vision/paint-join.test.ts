import { expect, test } from 'vitest';
import { joinJudgements } from '../../src/vision/paint-join.ts';
import type { PaintJudgement, PaintSight } from '../../src/vision/paint-judge.ts';

const frame = (sight: PaintSight, confidence = 0.9, xPx = 0): PaintJudgement => ({
  sight,
  confidence,
  reason: { code: 'paint/bare' },
  crop: { xPx, yPx: 0, widthPx: 10, heightPx: 10 },
});

test('frames that agree say it together, no surer than they are', () => {
  const joined = joinJudgements([frame('seen', 0.9, 7), frame('seen', 0.7), frame('seen', 0.8)]);
  expect(joined.sight).toBe('seen');
  expect(joined.confidence).toBeCloseTo(0.8, 12);
  expect(joined.crop.xPx).toBe(7);
});

test('one frame of five that sees otherwise is outvoted, two make it untold', () => {
  const seen = frame('seen');
  expect(joinJudgements([seen, seen, seen, seen, frame('not-seen')]).sight).toBe('seen');
  const differ = joinJudgements([seen, seen, seen, frame('not-seen'), frame('not-seen')]);
  expect(differ).toMatchObject({
    sight: 'cannot-tell',
    reason: { code: 'paint/frames-differ', seen: 3, of: 5 },
  });
});

test('where most frames cannot tell, nobody can', () => {
  const blind = frame('cannot-tell');
  expect(joinJudgements([blind, blind, blind, frame('seen')]).sight).toBe('cannot-tell');
  expect(joinJudgements([blind, blind])).toEqual(blind);
});
