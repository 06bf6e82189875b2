import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Layout, layoutOf } from '../../src/adjustment/layout.ts';
import { degFromRad, mmFromInches } from '../../src/basics/units.ts';
import type { Mark, MarkKind } from '../../src/marks/mark.ts';
import { BRAKE_STATES, type BrakeState } from '../../src/marks/view.ts';
import {
  armAngle,
  axialTravel,
  type Quantity,
  straightLineChange,
} from '../../src/measurement/quantities.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';

type Point = readonly [x: number, y: number];

type Mechanism = {
  readonly pins: Readonly<Record<BrakeState, Point>>;
  readonly camshaft: Point;
  /** Inner end of the rod behind the face, released. */
  readonly rodInnerMm: number;
};

function marked(kinds: readonly ('chamber-face' | 'clevis-pin' | 'camshaft-end')[]): readonly Mark[] {
  return kinds.map((kind) => ({ kind, id: kind, xPx: 0, yPx: 0, sigmaPx: 1, placedBy: 'hand' }));
}

function layoutFor(kinds: readonly ('chamber-face' | 'clevis-pin' | 'camshaft-end')[]): Layout {
  return layoutOf({
    cameras: [
      {
        focalPx: 1500,
        uLnFocal: 0.035,
        cxPx: 960,
        cyPx: 540,
        uCxPx: 19,
        uCyPx: 19,
        k1: 0,
        uK1: 0.015,
        k2: 0,
        uK2: 0.01,
      },
    ],
    poseCount: 1,
    places: 'own',
    views: BRAKE_STATES.map((state) => ({ state, camera: 0, pose: 0, marks: marked(kinds), isSide: false })),
    references: NO_REFERENCES,
    hand: 1,
  });
}

const LAYOUT = layoutFor(['chamber-face', 'clevis-pin', 'camshaft-end'] satisfies MarkKind[]);

function unknowns({ pins, camshaft, rodInnerMm }: Mechanism): Float64Array {
  const x = new Float64Array(LAYOUT.size);
  for (const state of BRAKE_STATES) x.set(pins[state], LAYOUT.pins[state]);
  x.set(camshaft, LAYOUT.camshaft as number);
  x[LAYOUT.rodInner] = rodInnerMm;
  return x;
}

/** A rod so long that it stays parallel to the chamber axis, as the tables of arm angles take it. */
const PARALLEL_MM = 1e9;

/** Pin on an arc of the arm about the camshaft, at the given distances past the camshaft along the chamber axis. */
function onArc(armMm: number, past: Readonly<Record<BrakeState, number>>): Mechanism {
  const pin = (along: number): Point => [200 + along, armMm - Math.sqrt(armMm ** 2 - along ** 2)];
  return {
    pins: { released: pin(past.released), applied: pin(past.applied), pulled: pin(past.pulled) },
    camshaft: [200, armMm],
    rodInnerMm: PARALLEL_MM,
  };
}

/** 90 degrees at mid-stroke. */
function symmetric(armMm: number, strokeMm: number): Mechanism {
  return onArc(armMm, { released: -strokeMm / 2, applied: strokeMm / 2, pulled: 0 });
}

/** 90 degrees at full stroke. */
function squareAtEnd(armMm: number, strokeMm: number): Mechanism {
  return onArc(armMm, { released: -strokeMm, applied: 0, pulled: -strokeMm / 2 });
}

function angleDeg(mechanism: Mechanism, state: BrakeState): number {
  const quantity = armAngle(unknowns(mechanism), LAYOUT, state);
  if (!quantity) throw new Error('the camshaft is marked');
  return degFromRad(quantity.value);
}

// The two schools of setting up an arm of 5.5 in at a stroke of 2.0 in: worked from asin(s / 2L) and asin(s / L).
test('90 degrees at mid-stroke: 100.48 released, 79.52 applied, 2.3 mm of side shift', () => {
  const mechanism = symmetric(mmFromInches(5.5), mmFromInches(2));
  expect(angleDeg(mechanism, 'released')).toBeCloseTo(100.48, 2);
  expect(angleDeg(mechanism, 'applied')).toBeCloseTo(79.52, 2);
  expect(angleDeg(mechanism, 'pulled')).toBeCloseTo(90, 9);
  expect(mechanism.pins.applied[1] - mechanism.pins.pulled[1]).toBeCloseTo(2.3, 1);
});

test('90 degrees at full stroke: 111.32 released, 90 applied, 9.6 mm of side shift', () => {
  const mechanism = squareAtEnd(mmFromInches(5.5), mmFromInches(2));
  expect(angleDeg(mechanism, 'released')).toBeCloseTo(111.32, 2);
  expect(angleDeg(mechanism, 'applied')).toBeCloseTo(90, 9);
  expect(mechanism.pins.released[1] - mechanism.pins.applied[1]).toBeCloseTo(9.6, 1);
});

// Half-angle asin(s / 2L) about 90 degrees, and swing asin(s / L) where the end is at 90: stroke 1.5, 2.0, 2.5 in.
const STROKES_IN = [1.5, 2, 2.5];
const ARMS = [
  { armIn: 5, half: [8.63, 11.54, 14.48], swing: [17.46, 23.58, 30.0] },
  { armIn: 5.5, half: [7.84, 10.48, 13.14], swing: [15.83, 21.32, 27.04] },
  { armIn: 6, half: [7.18, 9.59, 12.02], swing: [14.48, 19.47, 24.62] },
  { armIn: 6.5, half: [6.63, 8.85, 11.09], swing: [13.34, 17.92, 22.62] },
];

test.each(ARMS)('an arm of $armIn in swings as tabulated', ({ armIn, half, swing }) => {
  STROKES_IN.forEach((strokeIn, i) => {
    const [armMm, strokeMm] = [mmFromInches(armIn), mmFromInches(strokeIn)];
    expect(angleDeg(symmetric(armMm, strokeMm), 'released')).toBeCloseTo(90 + (half[i] as number), 2);
    expect(angleDeg(symmetric(armMm, strokeMm), 'applied')).toBeCloseTo(90 - (half[i] as number), 2);
    expect(angleDeg(squareAtEnd(armMm, strokeMm), 'released')).toBeCloseTo(90 + (swing[i] as number), 2);
  });
});

test('the arm length comes back from stroke and swing: L = s / (2 sin(swing / 2))', () => {
  for (const { armIn } of ARMS) {
    const mechanism = symmetric(mmFromInches(armIn), 50);
    const swingDeg = angleDeg(mechanism, 'released') - angleDeg(mechanism, 'applied');
    const strokeMm = axialTravel(unknowns(mechanism), LAYOUT, 'applied').value;
    expect(strokeMm / (2 * Math.sin((swingDeg * Math.PI) / 360))).toBeCloseTo(mmFromInches(armIn), 9);
  }
});

const coordinate = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (x: readonly [number, number], y: readonly [number, number]) =>
  fc.tuple(coordinate(...x), coordinate(...y));

const anyMechanism: fc.Arbitrary<Mechanism> = fc.record({
  pins: fc.record({
    released: point([60, 200], [-20, 20]),
    applied: point([60, 260], [-20, 20]),
    pulled: point([60, 260], [-20, 20]),
  }),
  camshaft: fc.oneof(point([40, 300], [80, 190]), point([40, 300], [-190, -80])),
  rodInnerMm: coordinate(40, 200),
});

// Independent of the engine's formula: the law of cosines in the triangle of inner rod end, pin and camshaft.
test('the arm angle is that of the triangle, with a rod that swivels', () => {
  fc.assert(
    fc.property(anyMechanism, fc.constantFrom(...BRAKE_STATES), (mechanism, state) => {
      const { pins, camshaft, rodInnerMm } = mechanism;
      const pin = pins[state];
      const inner: Point = [pin[0] - (pins.released[0] + rodInnerMm), 0];
      const side = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);
      const [r, a, across] = [side(pin, inner), side(pin, camshaft), side(inner, camshaft)];
      const expected = Math.acos((r * r + a * a - across * across) / (2 * r * a));
      expect(armAngle(unknowns(mechanism), LAYOUT, state)?.value).toBeCloseTo(expected, 7);
    }),
  );
});

test('travel is the difference along the axis, the straight line that of the distances from the face', () => {
  fc.assert(
    fc.property(anyMechanism, (mechanism) => {
      const { released, applied, pulled } = mechanism.pins;
      const x = unknowns(mechanism);
      expect(axialTravel(x, LAYOUT, 'applied').value).toBeCloseTo(applied[0] - released[0], 10);
      expect(axialTravel(x, LAYOUT, 'pulled').value).toBeCloseTo(pulled[0] - released[0], 10);
      const change = Math.hypot(...applied) - Math.hypot(...released);
      expect(straightLineChange(x, LAYOUT).value).toBeCloseTo(change, 10);
    }),
  );
});

const QUANTITIES: readonly (readonly [string, (x: Float64Array) => Quantity])[] = [
  ['stroke', (x) => axialTravel(x, LAYOUT, 'applied')],
  ['free stroke', (x) => axialTravel(x, LAYOUT, 'pulled')],
  ['straight line', (x) => straightLineChange(x, LAYOUT)],
  ...BRAKE_STATES.map(
    (state) => [`arm angle ${state}`, (x: Float64Array) => armAngle(x, LAYOUT, state) as Quantity] as const,
  ),
];

test.each(QUANTITIES)('the gradient of the %s is the numeric one, for every unknown', (_name, quantity) => {
  fc.assert(
    fc.property(anyMechanism, (mechanism) => {
      const x = unknowns(mechanism);
      const analytic = new Float64Array(LAYOUT.size);
      for (const { index, d } of quantity(x).gradient) analytic[index] = (analytic[index] as number) + d;
      const step = 1e-4;
      for (let i = 0; i < LAYOUT.size; i++) {
        const at = (by: number) => quantity(x.map((value, k) => (k === i ? value + by : value))).value;
        const numeric = (at(step) - at(-step)) / (2 * step);
        expect(Math.abs(numeric - (analytic[i] as number))).toBeLessThan(1e-8);
      }
    }),
  );
});

test('no camshaft end, no arm angle', () => {
  const layout = layoutFor(['chamber-face', 'clevis-pin']);
  expect(armAngle(new Float64Array(layout.size), layout, 'released')).toBeNull();
});
