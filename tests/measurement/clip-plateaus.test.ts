import { expect, test } from 'vitest';
import type { View } from '../../src/marks/view.ts';
import type { Application, Phase } from '../../src/measurement/clip-measurement.ts';
import { longestOf, picturedOf, plateausOf, restsThere } from '../../src/measurement/clip-plateaus.ts';
import type { Poses } from '../../src/measurement/frame-poses.ts';
import { anyClip } from '../simulation/any-clip.ts';
import { simulateClip } from '../simulation/clip-scene.ts';

const rest = (kind: Phase['kind'], from: number): Phase => ({ kind, from, to: from + 7 });

const RELEASED = rest('released', 0);
const [FIRST, SECOND] = [rest('held', 10), rest('held', 30)] as const;

/** Of a pin that rests at these places, mm, in the three plateaus; not seen between them. */
function posesOf(places: ReadonlyMap<Phase, number>): Poses {
  return Array.from({ length: 40 }, (_, frame) => {
    const at = [...places].find(([{ from, to }]) => from <= frame && frame <= to);
    if (!at) return null;
    const pose = { rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translation: [0, 0, 700] } as const;
    const pin = { xMm: at[1], yMm: 0, covariance: [0.01, 0, 0, 0.01] };
    return { pose, pin, chiSquare: 1, degreesOfFreedom: 1 };
  });
}

const longest = (first: number, second: number) =>
  longestOf(
    posesOf(
      new Map([
        [RELEASED, 130],
        [FIRST, first],
        [SECOND, second],
      ]),
    ),
    RELEASED,
    [FIRST, SECOND],
  );

test('the longest by millimetres is taken, whatever pixels said; of two alike the one that pixels said', () => {
  expect(longest(174, 176)).toBe(SECOND);
  expect(longest(176, 174)).toBe(FIRST);
  expect(longest(175, 175.1)).toBe(FIRST);
});

const applied = (index: number): View => ({
  state: 'applied',
  captureId: 'c',
  frame: { index, timeTicks: index },
  marks: [],
});

const application = (held: Phase, value: number): Application => ({
  phases: [RELEASED, held],
  strokeMm: { value, u: 0.4, U95: 0.8, budget: [] },
  toNinetyPercentS: null,
  toFullS: null,
  releaseS: null,
  creepMmPerS: null,
});

test('which application the applied picture is of is told, and a longer one beside it', () => {
  const { track } = simulateClip(anyClip(3, { framesPerS: 30 }));
  const from5 = { ...track, firstIndex: 5 };
  const both = [application(FIRST, 44), application(SECOND, 46)];
  expect(picturedOf([applied(5 + 12)], from5, both)).toEqual({ pictured: 0, longer: 1 });
  expect(picturedOf([applied(5 + 32)], from5, both)).toEqual({ pictured: 1, longer: null });
  expect(picturedOf([applied(5 + 25)], from5, both)).toEqual({ pictured: null, longer: null });
});

/** Travel in px of a clip whose phone sways as it begins, marked in frame 4; 100 px between the rests. */
const swaying = (atSeed: number) => {
  const phases = [
    { kind: 'releasing', from: 0, to: 8 },
    { kind: 'released', from: 9, to: 17 },
    { kind: 'applying', from: 18, to: 20 },
    { kind: 'held', from: 21, to: 29 },
  ] as const;
  const travelAt = (frame: number) => (frame <= 8 ? (atSeed * (9 - frame)) / 5 : frame <= 17 ? 0 : 100);
  const points = Array.from({ length: 30 }, (_, frame) => ({
    frame,
    timeS: frame / 30,
    travel: travelAt(frame),
    u: 0.1,
  }));
  const { track } = simulateClip({ ...anyClip(3, { framesPerS: 30 }), seedState: 'released' });
  const seeded = { ...track, firstIndex: 0, seed: { ...track.seed, index: 4 } };
  return plateausOf(phases, points, seeded);
};

test('a marked frame that sway takes for the end of a movement is of the rest beside it, one half way up is of none', () => {
  const [near, far] = [swaying(10), swaying(30)];
  expect(near.ok && near.value.own.from).toBe(9);
  expect(far.ok || far.failure).toEqual({
    code: 'clip/seed-elsewhere',
    state: 'released',
    phase: 'releasing',
  });
});

test('millimetres say whether it rests there', () => {
  const marked = (atMm: number) =>
    restsThere(
      posesOf(
        new Map([
          [rest('released', 0), atMm],
          [FIRST, 130],
        ]),
      ),
      FIRST,
      4,
    );
  expect(marked(130.2)).toBe(true);
  expect(marked(131)).toBe(false);
});
