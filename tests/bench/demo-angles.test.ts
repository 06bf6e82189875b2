import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { degFromRad } from '../../src/basics/units.ts';
import type { Capture } from '../../src/captures/capture.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { Measured } from '../../src/measurement/measured.ts';
import { demoCapture } from './demo-capture.ts';
import { demoMarks } from './demo-marks.ts';
import { truthOf } from './demo-truth.ts';
import { captureIdOf, MEASURED_SETS, type MeasuredSet } from './demo-wheel-ends.ts';

const HANDS = 6;
/** Of 60 angles 57 are to be held; both of a set share most of their error, so that the deviation is up to 2.4. Half of U holds 45. */
const LEAST_HELD = 52;
/**
 * The pictures are of one invented brake, and its depths lie to one side of the usual ones: all sets are off the same way by a
 * part of what the depths leave open. The mean of 150 draws: 0.2 u released, 0.5 u applied, both low.
 */
const MOST_MEAN_U = 0.9;

// The demo's own marks are one draw each, and the angles of all but one of its sets came out low by up to 1.4 degrees: by the draw.
test('arm angles of the demo: other hands marking the same pictures hold the truth, and are not all off to one side', () => {
  const offs = MEASURED_SETS.flatMap((set) => {
    const captures = truthOf(set.set).views.map(({ state, file }) =>
      demoCapture(captureIdOf(set, state), `${set.set}/${file}`),
    );
    return Array.from({ length: HANDS }, (_, hand) =>
      anglesOff(set, captures, 9000 + 100 * hand + set.seed),
    ).flat();
  });
  expect(offs.filter((off) => Math.abs(off) <= 1.96).length).toBeGreaterThanOrEqual(LEAST_HELD);
  const mean = offs.reduce((sum, off) => sum + off, 0) / offs.length;
  expect(Math.abs(mean)).toBeLessThan(MOST_MEAN_U);
});

/** Both angles less their truth, in their own standard uncertainties. */
function anglesOff(set: MeasuredSet, captures: readonly Capture[], seed: number): readonly number[] {
  const truth = truthOf(set.set);
  const draw = drawFrom(seed);
  const result = measure({
    views: truth.views.map((view) => ({
      state: view.state,
      captureId: captureIdOf(set, view.state),
      frame: null,
      marks: demoMarks(view, set.references, draw, set.id),
    })),
    sideViews: [],
    captures,
    cameraStill: false,
    cameraProfile: null,
    references: set.references,
  });
  if (!result.ok) throw new Error(result.failure.code);
  const off = (measured: Measured | null, truthDeg: number): number =>
    measured ? (measured.value - truthDeg / degFromRad(1)) / measured.u : Number.NaN;
  return [
    off(result.value.armAngleReleasedRad, truth.armAngleReleasedDeg),
    off(result.value.armAngleAppliedRad, truth.armAngleAppliedDeg),
  ];
}
