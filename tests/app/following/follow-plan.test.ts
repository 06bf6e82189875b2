import { expect, test } from 'vitest';
import { tooLong } from '../../../src/app/following/follow-plan.ts';
import type { Capture } from '../../../src/captures/capture.ts';
import { trackSchema } from '../../../src/marks/track.ts';
import { photo } from '../work/sample.ts';

const clipOf = (frameCount: number): Capture => ({
  ...photo('a'),
  kind: 'clip',
  clip: {
    ticksPerSecond: 60,
    frameCount,
    durationS: frameCount / 60,
    codec: 'avc1',
    headerTime: null,
    framesBy: 'decoder',
  },
});

const trackOf = (frames: number) => {
  const column = Array.from({ length: frames }, () => 1);
  return {
    id: 't',
    captureId: 'a',
    state: 'released',
    seed: { index: 0, timeTicks: 0 },
    corrections: [],
    firstIndex: 0,
    timeTicks: column.map((_, i) => i),
    points: [{ kind: 'clevis-pin', markId: 'pin', xCentiPx: column, yCentiPx: column, sigmaMilliPx: column }],
  };
};

test('a clip is followed whose track the record takes, and no longer one', () => {
  for (const [frameCount, isTaken] of [
    [20_000, true],
    [20_001, false],
  ] as const) {
    expect(trackSchema.safeParse(trackOf(frameCount)).success).toBe(isTaken);
    expect(tooLong(clipOf(frameCount)) === null).toBe(isTaken);
  }
});
