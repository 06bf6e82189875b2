/** Where the arm first passes square to the rod, while the angle falls. */
import type { ClipMeasurement, CurvePoint } from './clip-measurement.ts';
import { firstPassing } from './passing.ts';

export function squarePassing(curve: readonly CurvePoint[]): ClipMeasurement['square'] {
  const all = { from: 0, to: curve.length - 1 };
  const passing = firstPassing(
    curve,
    all,
    { value: Math.PI / 2, u: 0 },
    -1,
    ({ armAngleRad }) => armAngleRad,
  );
  if (!passing) return null;
  const after = curve.slice(passing.frame + 1).find(({ stroke, armAngleRad }) => stroke && armAngleRad);
  const before = curve[passing.frame];
  if (!before?.stroke || !after?.stroke) return null;
  const interval = after.timeS - before.timeS;
  const share = (passing.value - before.timeS) / interval;
  const perSecond = Math.abs(after.stroke.value - before.stroke.value) / interval;
  return {
    timeS: passing.value,
    strokeMm: {
      value: before.stroke.value + share * (after.stroke.value - before.stroke.value),
      u: Math.hypot(before.stroke.u, passing.u * perSecond),
    },
  };
}
