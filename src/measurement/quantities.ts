/**
 * The quantities asked for, as functions of the adjusted unknowns, with their gradients.
 *
 * Model    stroke          px(applied) - px(released), along the chamber axis
 *          free stroke     px(pulled) - px(released)
 *          power stroke    px(applied) - px(pulled)
 *          straight line   |p(applied)| - |p(released)|, p = (px, py) from the face point on the axis
 *          arm angle       at the pin, between r = (-R, -py), from the pin to the rod's inner end, and
 *                          a = (cx - px, cy - py), from the pin to the camshaft: atan2(|r x a|, r . a), 0 .. pi;
 *                          a vector v turns by (v x dv) / |v|^2
 * Assumes  millimetres and radians, chamber frame, plane of motion.
 */
import type { Gradient } from '../adjustment/derived.ts';
import type { Layout } from '../adjustment/layout.ts';
import { assert } from '../basics/result.ts';
import type { BrakeState } from '../marks/view.ts';

export type Quantity = { readonly value: number; readonly gradient: Gradient };

export function axialTravel(
  x: Float64Array,
  layout: Layout,
  to: BrakeState,
  from: BrakeState = 'released',
): Quantity {
  const [begin, end] = [pinAt(layout, from), pinAt(layout, to)];
  return {
    value: at(x, end) - at(x, begin),
    gradient: [
      { index: end, d: 1 },
      { index: begin, d: -1 },
    ],
  };
}

export function straightLineChange(x: Float64Array, layout: Layout): Quantity {
  const ends = [
    { pin: pinAt(layout, 'applied'), sign: 1 },
    { pin: pinAt(layout, 'released'), sign: -1 },
  ];
  let value = 0;
  const gradient = ends.flatMap(({ pin, sign }) => {
    const length = Math.hypot(at(x, pin), at(x, pin + 1));
    value += sign * length;
    return [
      { index: pin, d: (sign * at(x, pin)) / length },
      { index: pin + 1, d: (sign * at(x, pin + 1)) / length },
    ];
  });
  return { value, gradient };
}

/** null where no camshaft end is marked. */
export function armAngle(x: Float64Array, layout: Layout, state: BrakeState): Quantity | null {
  const camshaft = layout.camshaft;
  if (camshaft === null) return null;
  const pin = pinAt(layout, state);
  const released = pinAt(layout, 'released');
  const rodLength = at(x, released) + at(x, layout.rodInner);
  const r = [-rodLength, -at(x, pin + 1)] as const;
  const a = [at(x, camshaft) - at(x, pin), at(x, camshaft + 1) - at(x, pin + 1)] as const;
  const crossed = r[0] * a[1] - r[1] * a[0];
  const dotted = r[0] * a[0] + r[1] * a[1];
  const sense = crossed < 0 ? -1 : 1;
  const rSquared = r[0] ** 2 + r[1] ** 2;
  const aSquared = a[0] ** 2 + a[1] ** 2;
  // Turn of each vector by its own components, signed so that it opens the angle.
  const byR = [(sense * r[1]) / rSquared, (-sense * r[0]) / rSquared] as const;
  const byA = [(-sense * a[1]) / aSquared, (sense * a[0]) / aSquared] as const;
  return {
    value: Math.atan2(Math.abs(crossed), dotted),
    gradient: [
      { index: released, d: -byR[0] },
      { index: layout.rodInner, d: -byR[0] },
      { index: pin + 1, d: -byR[1] - byA[1] },
      { index: pin, d: -byA[0] },
      { index: camshaft, d: byA[0] },
      { index: camshaft + 1, d: byA[1] },
    ],
  };
}

function pinAt(layout: Layout, state: BrakeState): number {
  const pin = layout.pins[state];
  assert(pin !== undefined, `the ${state} view is part of the problem`);
  return pin;
}

function at(x: Float64Array, index: number): number {
  return x[index] as number;
}
