import { expect, test } from 'vitest';
import { captureSchema } from '../../src/captures/capture.ts';
import { differenceFromRecord } from '../../src/frames/same-capture.ts';

const recorded = captureSchema.parse({
  id: 'c1',
  kind: 'clip',
  fileName: 'walk-round.mp4',
  mediaType: 'video/mp4',
  sizeBytes: 1000,
  sha256: 'a'.repeat(64),
  widthPx: 320,
  heightPx: 180,
  rotationDeg: 0,
  takenAt: null,
  fileWrittenAt: null,
  addedAt: null,
  focal35Mm: null,
  clip: {
    ticksPerSecond: 15_360,
    frameCount: 72,
    durationS: 2.4,
    codec: 'avc1.64000d',
    headerTime: null,
    framesBy: 'decoder',
  },
});
const clip = { ticksPerSecond: 15_360, frameCount: 72 };

test('the recorded file is itself', () => {
  expect(differenceFromRecord(recorded, { kind: 'clip', widthPx: 320, heightPx: 180, clip })).toBeNull();
});

test.each([
  [{ kind: 'photo', widthPx: 320, heightPx: 180, clip: null }, 'kind', 'clip', 'photo'],
  [{ kind: 'clip', widthPx: 180, heightPx: 180, clip }, 'width', 320, 180],
  [{ kind: 'clip', widthPx: 320, heightPx: 320, clip }, 'height', 180, 320],
  [
    { kind: 'clip', widthPx: 320, heightPx: 180, clip: { ...clip, ticksPerSecond: 600 } },
    'clock',
    15_360,
    600,
  ],
  [{ kind: 'clip', widthPx: 320, heightPx: 180, clip: { ...clip, frameCount: 71 } }, 'frame-count', 72, 71],
] as const)('another one is told by its first difference: %#', (found, fact, was, is) => {
  expect(differenceFromRecord(recorded, found)).toEqual({
    code: 'captures/not-the-recorded-file',
    fact,
    recorded: was,
    found: is,
  });
});
