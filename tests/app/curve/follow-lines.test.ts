/** The lines over a frame, against the ray-traced sample clip's own truth. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { followLines } from '../../../src/app/curve/follow-lines.ts';
import { followStroke } from '../../../src/app/curve/follow-stroke.ts';
import { fittedView } from '../../../src/app/viewer/view-transform.ts';
import { type Truth, truthClip } from '../../browser/harness-curve/truth-clip.ts';

const truth: Truth = JSON.parse(readFileSync('sample-media/clip-tape/truth.json', 'utf8'));
const {
  track,
  measurement: { drawings },
} = truthClip(truth, 15_360);
const linesIn = (i: number) => followLines(track, i, drawings[i] ?? null);

const SEEN = truth.frames.map((_, i) => i).filter((i) => i < 66 || i > 74);

test('crosses lie where things were followed, the dimension as it was measured', () => {
  const { crosses, unseen, drawing } = linesIn(50);
  expect(crosses).toHaveLength(track.points.length);
  const pin = crosses.find(({ kind }) => kind === 'clevis-pin');
  const [x, y] = truth.frames[50]?.points.clevisPin ?? [];
  expect(pin?.xPx).toBeCloseTo(x ?? 0, 1);
  expect(pin?.yPx).toBeCloseTo(y ?? 0, 1);
  expect(drawing).toBe(drawings[50]);
  expect(unseen).toEqual([]);
});

test('a hidden pin is said and has neither cross nor dimension', () => {
  const { crosses, unseen, drawing } = linesIn(70);
  expect(unseen).toEqual(['clevis-pin']);
  expect(crosses.some(({ kind }) => kind === 'clevis-pin')).toBe(false);
  expect(drawing).toBeNull();
});

// It is looked for in some frames only: that it is not there in one says nothing.
test('of a tape that has no place in a frame nothing is said', () => {
  const none = track.timeTicks.map(() => null);
  const graduation = {
    kind: 'tape-graduation',
    markId: '1 in',
    xCentiPx: none,
    yCentiPx: none,
    sigmaMilliPx: none,
  } as const;
  const taped = { ...track, points: [...track.points, graduation] };
  expect(followLines(taped, 50, null).unseen).toEqual([]);
  expect(followLines(taped, 70, null).unseen).toEqual(['clevis-pin']);
});

test('the value stays inside the picture, on a phone and on a desk', () => {
  for (const [widthCss, heightCss] of [
    [360, 203],
    [1400, 788],
  ] as const) {
    const view = fittedView({ widthPx: 1920, heightPx: 1080 }, { widthCss, heightCss });
    for (const i of SEEN) {
      const value = followStroke(view, linesIn(i), 190)?.value;
      expect(value?.leftCss).toBeGreaterThanOrEqual(0);
      expect((value?.leftCss ?? 0) + 190).toBeLessThanOrEqual(widthCss);
    }
  }
});
