import { expect, test } from 'vitest';
import type { Adjustment } from '../../src/adjustment/adjustment.ts';
import { drawFrom } from '../../src/basics/random.ts';
import { IDENTITY3, type Vec3 } from '../../src/basics/rotation.ts';
import { type FrameSights, framePose } from '../../src/measurement/frame-pose.ts';

const FOCAL_PX = 1500;
const AWAY_MM = 700;
const MIDDLE_PX = [960, 540] as const;
/** A camera without distortion, and nothing else. */
const ADJUSTMENT = {
  layout: { cameras: [0] },
  best: { x: Float64Array.from([Math.log(FOCAL_PX), ...MIDDLE_PX, 0, 0]) },
} as unknown as Adjustment;

/** Things that stand still about a brake, seen square on; every third by so much beside its place, each another way: a smeared, sheared picture. */
function sightsOf(seed: number, offPx: number): FrameSights {
  const draw = drawFrom(seed);
  const stills = Array.from({ length: 9 }, (_, i) => {
    const world: Vec3 = [draw.uniform(-200, 200), draw.uniform(-120, 120), draw.uniform(-60, 200)];
    const scale = FOCAL_PX / (AWAY_MM + world[2]);
    const [dx, dy] = [draw.normal(0, 0.2), draw.normal(0, 0.2)];
    const [ox, oy] = i % 3 === 0 ? [draw.normal(0, offPx), draw.normal(0, offPx)] : [0, 0];
    const place = {
      xPx: MIDDLE_PX[0] + scale * world[0] + dx + ox,
      yPx: MIDDLE_PX[1] + scale * world[1] + dy + oy,
      sigmaPx: 0.2,
    };
    return { world, place };
  });
  return { stills, pins: [], pinZMm: 0 };
}

const BESIDE = { rotation: IDENTITY3, translation: [3, -2, AWAY_MM + 5] as const };

test('where single things disagree widely the camera is found all the same, however slowly the steps come to their end', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const found = framePose(ADJUSTMENT, 0, BESIDE, [0, 0], sightsOf(seed, 8));
    expect(found, `seed ${seed}`).not.toBeNull();
    const [, , z] = found?.pose.translation ?? [0, 0, 0];
    expect(Math.abs(z - AWAY_MM), `seed ${seed}`).toBeLessThan(25);
  }
});

test('of four things no camera is found', () => {
  const { stills, ...rest } = sightsOf(1, 0);
  expect(framePose(ADJUSTMENT, 0, BESIDE, [0, 0], { ...rest, stills: stills.slice(0, 4) })).toBeNull();
});
