import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decideAdjuster } from '../../src/finding/adjuster-decision.ts';
import { adjusterTurn, isToldWell } from '../../src/measurement/adjuster-turn.ts';
import { lnLengthSeen, sightAt, turnSeen, wrenchSeen } from '../../src/measurement/hex-sight.ts';
import { applicationsBefore, type WrenchSight, wrenchRests } from '../../src/measurement/wrench-clip.ts';
import type { WrenchPicture } from '../../src/measurement/wrench-directions.ts';
import { simulateWrench } from '../simulation/wrench.ts';
import { notFinite } from './not-finite.ts';

const RAD = Math.PI / 180;
const at = (xPx: number, yPx: number, sigmaPx = 1) => ({ xPx, yPx, sigmaPx });
const ARM = { camshaft: at(900, 900, 0.5), pin: at(1300, 900, 0.5) };
const picture = (applicationsBefore: number, turnedDeg: number, arm: WrenchPicture['arm'] = ARM) => ({
  applicationsBefore,
  focalPx: 1500,
  uLnFocal: 0.035,
  middlePx: [500, 500] as const,
  centre: at(500, 500),
  tip: at(500 + 300 * Math.cos(turnedDeg * RAD), 500 + 300 * Math.sin(turnedDeg * RAD)),
  arm,
});

test('worked by hand: a circle tilted by 60 degrees halves what lies in the direction of the tilt', () => {
  // Half way between far side and axis: tan b = tan 45 / cos 60 = 2. So small that perspective does nothing.
  const sight = sightAt(60 * RAD, 0);
  const wrenchAt = (b: number) => wrenchSeen([0, 0], [1e-7 * Math.cos(b), 1e-7 * Math.sin(b)]);
  const seenAt = (b: number) => turnSeen(wrenchAt(b), sight);
  const seen = seenAt(Math.atan(2));
  expect(seen.angleRad / RAD).toBeCloseTo(45, 5);
  // r^2 = (1/4 + 1) / 2, and the length over the distance is what was seen over r.
  expect(Math.exp(lnLengthSeen(wrenchAt(Math.atan(2)), sight)) * 1e7).toBeCloseTo(1 / Math.sqrt(0.625), 5);
  const [more, less] = [1e-4, -1e-4].map((d) => seenAt(Math.atan(2) + d).angleRad);
  expect(seen.byDirection).toBeCloseTo(((more as number) - (less as number)) / 2e-4, 4);
});

test('worked by hand: perspective, the end of a wrench that comes nearer by half is seen twice as far out', () => {
  // Hex at distance 2 before the camera, plane tilted by 30 degrees, far side to the right: the wrench points left and comes nearer.
  const sight = sightAt(30 * RAD, 0);
  const [out, nearer] = [1.5 * Math.cos(30 * RAD), 1.5 * Math.sin(30 * RAD)];
  const wrench = wrenchSeen([0, 0], [-out / (2 - nearer), 0]);
  expect(Math.abs(turnSeen(wrench, sight).angleRad / RAD)).toBeCloseTo(180, 9);
  expect(Math.exp(lnLengthSeen(wrench, sight))).toBeCloseTo(1.5 / 2, 12);
});

test('worked by hand: from 12 to 3 on the clock is a quarter turn clockwise', () => {
  const turn = adjusterTurn([picture(0, -90), picture(3, -45), picture(6, 0)], true);
  if (!turn.ok) throw new Error(turn.failure.code);
  const { totalRad, applications, perApplicationRad, places } = turn.value;
  expect(Math.abs(totalRad.value / RAD - 90)).toBeLessThan(2 * (totalRad.u / RAD));
  expect(totalRad.value).toBeGreaterThan(0);
  expect(applications).toBe(6);
  expect(perApplicationRad.value).toBeCloseTo(totalRad.value / 6, 12);
  expect(places.map((place) => place.applicationsBefore)).toEqual([0, 3, 6]);
  expect(decideAdjuster(turn.value, 'counter-clockwise').answer).toBe('takes-up');
  expect(decideAdjuster(turn.value, 'clockwise').reasons).toEqual(['adjuster/turned-off']);
  expect(decideAdjuster(turn.value, null).reasons).toEqual(['adjuster/direction-not-said']);
});

const rolled = (n: number, deg: number, roll: number): WrenchPicture => {
  const turn = ({ xPx, yPx, sigmaPx }: ReturnType<typeof at>) => {
    const [x, y, c, s] = [xPx - 500, yPx - 500, Math.cos(roll * RAD), Math.sin(roll * RAD)];
    return at(500 + c * x - s * y, 500 + s * x + c * y, sigmaPx);
  };
  const { centre, tip, ...rest } = picture(n, deg);
  const arm = { camshaft: turn(ARM.camshaft), pin: turn(ARM.pin) };
  return { ...rest, centre: turn(centre), tip: turn(tip), arm };
};

test('a camera that rolls with the arm marked adds nothing; without it, nothing is said', () => {
  for (const saidStill of [true, false]) {
    const turn = adjusterTurn([rolled(0, 10, 0), rolled(6, 10, 25)], saidStill);
    expect(turn.ok && Math.abs(turn.value.totalRad.value)).toBeLessThan(0.5 * RAD);
    expect(turn.ok && turn.value.cameraStood).toBe(false);
    expect(adjusterTurn([picture(0, 0, null), picture(6, 30)], saidStill)).toEqual({
      ok: false,
      failure: { code: 'adjuster-turn/no-arm', unmarked: 1 },
    });
  }
});

test('a camera stood where it is said and the arm agrees', () => {
  const stood = (pictures: readonly WrenchPicture[], saidStill: boolean) => {
    const turn = adjusterTurn(pictures, saidStill);
    return turn.ok ? turn.value.cameraStood : turn.failure.code;
  };
  expect(stood([picture(0, 0), picture(6, 30)], true)).toBe(true);
  expect(stood([picture(0, 0), picture(6, 30)], false)).toBe(false);
  expect(stood([rolled(0, 0, 0), rolled(6, 30, 2)], true)).toBe(false);
});

test('a wrench put over at the end tells how slanted it is seen, and turns nothing; before that it is refused', () => {
  const turned = [picture(0, 0), picture(3, 30), picture(6, 50)];
  const plain = adjusterTurn(turned, true);
  const over = adjusterTurn([...turned, picture(6, 140), picture(6, -60)], true);
  if (!plain.ok || !over.ok) throw new Error('not read');
  expect(over.value.totalRad.value / RAD).toBeCloseTo(50, 0);
  expect(over.value.totalRad.u).toBeLessThan(0.5 * plain.value.totalRad.u);
  expect([isToldWell(plain.value), isToldWell(over.value)]).toEqual([false, true]);
  expect([plain.value.putOver, over.value.putOver]).toEqual([0, 2]);
  const early = adjusterTurn([picture(0, 0), picture(3, 30), picture(3, 90), picture(6, 50)], true);
  expect(early).toEqual({ ok: false, failure: { code: 'adjuster-turn/put-over', applicationsBefore: 3 } });
});

test('put over to one side only a little, the turn may stay open; put over the opposite way, it is told', () => {
  const stepsDeg = [12, 11, 10, 8, 7, 6, 5, 4];
  const scene = { seed: 40_205, sigmaPx: 1, tiltDeg: [0, 10], hand: null, stepsDeg } as const;
  const read = (putOverDeg: readonly number[]) => {
    const { pictures, totalRad } = simulateWrench({ ...scene, putOverDeg });
    const turn = adjusterTurn(pictures, true);
    if (!turn.ok) throw new Error(turn.failure.code);
    return { told: isToldWell(turn.value), offDeg: Math.abs(turn.value.totalRad.value - totalRad) / RAD };
  };
  expect(read([52, -91]).told).toBe(false);
  const opposite = read([52, -91, 180]);
  expect(opposite.told).toBe(true);
  expect(opposite.offDeg).toBeLessThan(3);
});

test('where the file tells no focal length, a wrong one neither spoils the turn nor refuses it', () => {
  const stepsDeg = [12, 11, 10, 8, 7, 6, 5, 4];
  const putOverDeg = [120, -120];
  const scenes = Array.from({ length: 40 }, (_, i) => 2000 + i).map((seed) => {
    const scene = { seed, sigmaPx: 1, tiltDeg: [0, 35], hand: null, stepsDeg, putOverDeg } as const;
    const { pictures, totalRad } = simulateWrench({ ...scene, uFocal: 0.25 });
    const turn = adjusterTurn(pictures, true);
    if (!turn.ok) throw new Error(turn.failure.code);
    const { value, u } = turn.value.totalRad;
    return { offDeg: Math.abs(value - totalRad) / RAD, inU95: Math.abs(value - totalRad) < 1.96 * u };
  });
  expect(scenes.filter(({ offDeg }) => offDeg > 3).length).toBeLessThanOrEqual(1);
  expect(scenes.filter(({ inU95 }) => inU95).length).toBeGreaterThanOrEqual(34);
});

test('what cannot be read is said', () => {
  const code = (pictures: readonly WrenchPicture[]) => {
    const turn = adjusterTurn(pictures, true);
    return turn.ok ? 'ok' : turn.failure.code;
  };
  expect(code([picture(2, 0), picture(2, 30)])).toBe('adjuster-turn/too-few');
  expect(code([picture(0, 0), { ...picture(4, 0), tip: at(503, 500) }])).toBe('adjuster-turn/short');
  expect(code([picture(0, 0), picture(4, 178)])).toBe('adjuster-turn/too-far');
  const other = { ...picture(4, 1), tip: at(620, 500) };
  expect(code([picture(0, 0), other, picture(6, 2), picture(8, 3)])).toBe('adjuster-turn/lengths-differ');
});

test('too few applications, or a wrench that went forth and back, decide nothing', () => {
  const decided = (...places: readonly (readonly [number, number])[]) => {
    const turn = adjusterTurn(
      places.map(([n, deg]) => picture(n, deg)),
      true,
    );
    return turn.ok ? decideAdjuster(turn.value, 'counter-clockwise') : turn.failure;
  };
  expect(decided([0, 0], [3, 0])).toEqual({ answer: 'cannot-tell', reasons: ['adjuster/few-applications'] });
  expect(decided([0, 0], [4, 0])).toEqual({ answer: 'does-not-take-up', reasons: [] });
  expect(decided([0, 0], [1, 25])).toEqual({ answer: 'cannot-tell', reasons: ['adjuster/few-applications'] });
  expect(decided([0, 0], [2, 30], [4, 0])).toMatchObject({ reasons: ['adjuster/near-least-turn'] });
  expect(decided([0, 0], [2, 50], [4, 20])).toMatchObject({ reasons: ['adjuster/went-back'] });
  expect(decided([0, 0], [1, 60], [4, 60])).toMatchObject({ reasons: ['adjuster/too-fast'] });
});

test('simulated: within three standard uncertainties nearly always, and a still wrench never takes up', () => {
  let held = 0;
  for (let seed = 1; seed <= 30; seed++) {
    const scene = { seed, sigmaPx: 1, tiltDeg: [0, 35], hand: null } as const;
    const works = simulateWrench({ ...scene, stepsDeg: [12, 10, 8, 6, 5, 4] });
    const turn = adjusterTurn(works.pictures, true);
    if (!turn.ok) continue;
    const { value, u } = turn.value.totalRad;
    if (Math.abs(value - works.totalRad) < 3 * u) held++;
    for (const hand of [null, { offMm: 20, rollDeg: 8 }, { offMm: 0, rollDeg: 8 }]) {
      const still = simulateWrench({ ...scene, hand, playDeg: 1.5, stepsDeg: [0, 0, 0, 0, 0, 0] });
      // Also where the person errs and says that the camera stood still.
      const seen = adjusterTurn(still.pictures, true);
      for (const backedOff of ['clockwise', 'counter-clockwise'] as const)
        if (seen.ok) expect(decideAdjuster(seen.value, backedOff).answer).not.toBe('takes-up');
    }
  }
  expect(held).toBeGreaterThanOrEqual(28);
});

test('a clip: one picture of each released rest, counted by the held phases before it', () => {
  const phases = [
    { kind: 'released', from: 0, to: 9 },
    { kind: 'applying', from: 10, to: 12 },
    { kind: 'held', from: 13, to: 20 },
    { kind: 'releasing', from: 21, to: 23 },
    { kind: 'released', from: 24, to: 33 },
  ] as const;
  // The arm and the wrench on it swing while applied; 20 degrees are taken up.
  const sights = Array.from({ length: 34 }, (_, frame): WrenchSight => {
    const swing = frame > 9 && frame < 24 ? 15 : 0;
    const { centre, tip } = picture(0, swing + (frame > 13 ? 20 : 0));
    return frame === 5 ? null : { centre, tip, arm: ARM };
  });
  const rests = wrenchRests(sights, phases);
  expect(rests.map((rest) => rest.applicationsBefore)).toEqual([0, 1]);
  expect(rests[1]?.frame).toBeGreaterThanOrEqual(24);
  const turn = adjusterTurn(
    rests.map((rest) => ({ ...rest, focalPx: 1500, uLnFocal: 0.035, middlePx: [500, 500] as const })),
    true,
  );
  expect(turn.ok && turn.value.totalRad.value / RAD).toBeCloseTo(20, 0);
  expect(applicationsBefore(phases, 15)).toBe(0);
});

const anyPoint = fc.record({
  xPx: fc.oneof(fc.double({ min: -1e5, max: 1e5, noNaN: true }), fc.constantFrom(0, 500)),
  yPx: fc.oneof(fc.double({ min: -1e5, max: 1e5, noNaN: true }), fc.constantFrom(0, 500)),
  sigmaPx: fc.double({ min: 0.01, max: 500, noNaN: true }),
});
const anyPicture = fc.record({
  applicationsBefore: fc.integer({ min: 0, max: 100 }),
  focalPx: fc.double({ min: 100, max: 1e4, noNaN: true }),
  uLnFocal: fc.constantFrom(0.005, 0.035, 0.25),
  middlePx: fc.constantFrom([960, 540] as const, [0, 0] as const),
  centre: anyPoint,
  tip: anyPoint,
  arm: fc.option(fc.record({ pin: anyPoint, camshaft: anyPoint })),
});

test('whatever is marked: finite numbers or a code, nothing thrown', () => {
  fc.assert(
    fc.property(fc.array(anyPicture, { maxLength: 8 }), fc.boolean(), (pictures, cameraStill) => {
      const turn = adjusterTurn(pictures, cameraStill);
      expect(notFinite(turn.ok ? turn.value : turn.failure)).toEqual([]);
      if (!turn.ok) expect(turn.failure.code).toMatch(/^adjuster-turn\//);
      else expect(turn.value.totalRad.u).toBeGreaterThan(0);
    }),
    { numRuns: 60 },
  );
});
