import { describe, expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { phasesOf, type TravelPoint } from '../../src/measurement/phases.ts';
import { type Course, travelOf } from '../simulation/clip-path.ts';

const COURSE: Course = {
  strokesMm: [45],
  restS: 1.5,
  heldS: 1.5,
  applyS: 0.3,
  releaseS: 0.3,
  creepMmPerS: 0,
  begins: 'released',
  ends: 'released',
};

type Asked = { readonly framesPerS?: number; readonly u?: number; readonly uneven?: boolean };

function pointsOf(course: Partial<Course>, { framesPerS = 30, u = 0.2, uneven = false }: Asked = {}) {
  const travel = travelOf({ ...COURSE, ...course });
  const draw = drawFrom(11);
  const points: TravelPoint[] = [];
  for (let t = 0; t < travel.lastingS; t += (uneven ? draw.uniform(0.6, 1.4) : 1) / framesPerS)
    points.push({ frame: points.length, timeS: t, travel: travel.travelMm(t) + draw.normal(0, u), u });
  return { points, travel };
}

function kindsOf(points: readonly TravelPoint[]) {
  const phases = phasesOf(points, 5);
  if (!phases.ok) throw new Error(phases.failure.code);
  return phases.value.map(({ kind }) => kind);
}

const ONE = ['released', 'applying', 'held', 'releasing', 'released'];

describe('one application', () => {
  test.each([24, 30, 60, 240])('at %d frames a second: begins told within a frame or two', (framesPerS) => {
    const { points, travel } = pointsOf({}, { framesPerS });
    const phases = phasesOf(points, 5);
    if (!phases.ok) throw new Error(phases.failure.code);
    expect(phases.value.map(({ kind }) => kind)).toEqual(ONE);
    const [begin, letGo] = [travel.applications[0]?.begin ?? 0, travel.applications[0]?.letGo ?? 0];
    const late = (i: number, truth: number) => (phases.value[i]?.from ?? 0) - truth * framesPerS;
    expect(Math.abs(late(1, begin))).toBeLessThanOrEqual(2);
    expect(Math.abs(late(3, letGo))).toBeLessThanOrEqual(2);
  });

  test('at uneven times', () => expect(kindsOf(pointsOf({}, { uneven: true }).points)).toEqual(ONE));
  test('released slowly', () => expect(kindsOf(pointsOf({ releaseS: 1.5, restS: 3 }).points)).toEqual(ONE));
  test('creeping while held', () => expect(kindsOf(pointsOf({ creepMmPerS: 0.8 }).points)).toEqual(ONE));
  test('a shaky camera', () => expect(kindsOf(pointsOf({}, { u: 0.8 }).points)).toEqual(ONE));

  test('the pin hidden while held', () => {
    const { points } = pointsOf({});
    expect(kindsOf(points.filter(({ timeS }) => timeS < 2.7 || timeS > 3.1))).toEqual(ONE);
  });

  test('blurred while it moves', () => {
    const { points, travel } = pointsOf({ applyS: 0.5 });
    const begin = travel.applications[0]?.begin ?? 0;
    expect(kindsOf(points.filter(({ timeS }) => timeS < begin + 0.03 || timeS > begin + 0.2))).toEqual(ONE);
  });
});

test('three applications', () => {
  expect(kindsOf(pointsOf({ strokesMm: [45, 44, 46] }).points)).toEqual([
    ...ONE,
    ...ONE.slice(1),
    ...ONE.slice(1),
  ]);
});

test('a clip that begins applied, and one that ends so', () => {
  expect(kindsOf(pointsOf({ begins: 'applied' }).points)).toEqual(['held', 'releasing', 'released']);
  expect(kindsOf(pointsOf({ ends: 'applied' }).points)).toEqual(['released', 'applying', 'held']);
});

test('no application is no stroke', () => {
  const draw = drawFrom(2);
  const still = Array.from({ length: 90 }, (_, frame) => ({
    frame,
    timeS: frame / 30,
    travel: draw.normal(0, 0.2),
    u: 0.2,
  }));
  const phases = phasesOf(still, 5);
  expect(!phases.ok && phases.failure.code).toBe('clip/no-application');
  const few = phasesOf(still.slice(0, 5), 5);
  expect(!few.ok && few.failure.code).toBe('clip/too-short');
});
