/** The lines over a frame, against the ray-traced sample clip's own truth. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { followLines } from '../../../src/app/curve/follow-lines.ts';
import { followStroke } from '../../../src/app/curve/follow-stroke.ts';
import { fittedView } from '../../../src/app/viewer/view-transform.ts';
import type { PicturePoint } from '../../../src/measurement/measurement.ts';
import { type Truth, truthClip } from '../../browser/harness-curve/truth-clip.ts';

const truth: Truth = JSON.parse(readFileSync('sample-media/clip-tape/truth.json', 'utf8'));
const { track, drawn } = truthClip(truth, 15_360);

const SEEN = truth.frames.map((_, i) => i).filter((i) => i < 66 || i > 74);

const apart = (a: PicturePoint | undefined, b: PicturePoint | undefined) =>
  a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : Number.NaN;

/** A point of the plane through the pin's visible end, as the truth's camera of that frame sees it. */
function seenInTruth(i: number, xMm: number, yMm: number): PicturePoint {
  const view = truth.views[0];
  const pose = truth.frames[i]?.cameraFromChamber ?? [];
  const [a = 0, b = 0, c = 1] = pose.map((row) => row[0] * xMm + row[1] * yMm + row[2] * -25 + row[3]);
  const [cx = 0, cy = 0] = view?.principalPx ?? [];
  return [cx + ((view?.focalPx ?? 0) * a) / c, cy + ((view?.focalPx ?? 0) * b) / c];
}

test('in its own frame the drawing is where it was, with no length yet', () => {
  const { drawing } = followLines(track, drawn.at, drawn);
  expect(apart(drawing?.dimension[0], drawn.drawing.dimension[0])).toBeLessThan(0.5);
  expect(apart(drawing?.dimension[1], drawn.drawing.dimension[0])).toBeLessThan(2.5);
});

test('in every frame of a swaying clip both ends lie within 3 px of where the truth has them', () => {
  const released = truth.chamberFrame.pinReleasedMm[0];
  for (const i of SEEN) {
    const { drawing } = followLines(track, i, drawn);
    const strokeMm = truth.frames[i]?.strokeMm ?? 0;
    expect(apart(drawing?.dimension[0], seenInTruth(i, released, -62)), `start, frame ${i}`).toBeLessThan(3);
    expect(
      apart(drawing?.dimension[1], seenInTruth(i, released + strokeMm, -62)),
      `end, frame ${i}`,
    ).toBeLessThan(3);
  }
});

test('crosses lie where things were followed; the second extension line begins at the pin', () => {
  const { crosses, unseen, drawing } = followLines(track, 50, drawn);
  expect(crosses).toHaveLength(track.points.length);
  const pin = crosses.find(({ kind }) => kind === 'clevis-pin');
  const [x, y] = truth.frames[50]?.points.clevisPin ?? [];
  expect(pin?.xPx).toBeCloseTo(x ?? 0, 1);
  expect(pin?.yPx).toBeCloseTo(y ?? 0, 1);
  expect(drawing?.extensions[1][0]).toEqual([pin?.xPx, pin?.yPx]);
  expect(unseen).toEqual([]);
});

test('a hidden pin is said and has neither cross nor dimension', () => {
  const { crosses, unseen, drawing } = followLines(track, 70, drawn);
  expect(unseen).toEqual(['clevis-pin']);
  expect(crosses.some(({ kind }) => kind === 'clevis-pin')).toBe(false);
  expect(drawing).toBeNull();
});

test('with too little that stands still there is no dimension', () => {
  const few = { ...track, points: track.points.filter(({ kind }) => kind !== 'still') };
  expect(followLines(few, 50, drawn).drawing).toBeNull();
});

test('the value stays inside the picture, on a phone and on a desk', () => {
  for (const [widthCss, heightCss] of [
    [360, 203],
    [1400, 788],
  ] as const) {
    const view = fittedView({ widthPx: 1920, heightPx: 1080 }, { widthCss, heightCss });
    for (const i of SEEN) {
      const value = followStroke(view, followLines(track, i, drawn), 190)?.value;
      expect(value?.leftCss).toBeGreaterThanOrEqual(0);
      expect((value?.leftCss ?? 0) + 190).toBeLessThanOrEqual(widthCss);
    }
  }
});
