import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { type SceneOptions, simulate } from '../simulation/scene.ts';

/** A released and an applied picture of two wheel ends, which fits badly or well: only the directions matter here. */
function fromTwoPlaces(options: Partial<SceneOptions>, offSquareDeg: number): MeasureInput {
  const scene = { reference: 'tape', sigmaPx: 0.5, rodMarks: true, typical: true, strokeMm: 45 } as const;
  const seeds = Array.from({ length: 400 }, (_, i) => i + 1);
  const views = seeds.map((seed) => simulate({ ...scene, ...options, seed, offSquareDeg }));
  const [one, other] = [views[0], views.find((v) => apartDeg(v, views[0]) > 34)];
  return pair(one?.input, (offSquareDeg > 20 ? other : one)?.input);
}

function apartDeg(a: ReturnType<typeof simulate>, b: ReturnType<typeof simulate> | undefined): number {
  const [p, q] = [a.poses[0]?.rows[2], b?.poses[0]?.rows[2]];
  if (!p || !q) return 0;
  const cosine = p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  return (Math.acos(cosine) * 180) / Math.PI;
}

function pair(one: MeasureInput | undefined, other: MeasureInput | undefined): MeasureInput {
  if (!one || !other) throw new Error('no such pair');
  const views = [one.views[0], other.views[1]].flatMap((view) => view ?? []);
  const renamed = views.map((view, i) => ({
    ...view,
    marks: view.marks.map((mark) => ({ ...mark, id: `${i}-${mark.id}` })),
  }));
  return { ...one, views: renamed };
}

const codes = (input: MeasureInput): readonly string[] => {
  const result = measure(input);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value.warnings.map(({ code }) => code);
};

test('pictures from directions far apart are told where only a tape holds them', () => {
  expect(codes(fromTwoPlaces({ hand: 1 }, 25))).toContain('measurement/views-apart');
  expect(codes(fromTwoPlaces({ hand: 1 }, 10))).not.toContain('measurement/views-apart');
});

test('a picture held on its side, from nearly the same place, is not from far apart', () => {
  const scene = { reference: 'tape', sigmaPx: 0.5, rodMarks: true, typical: true, strokeMm: 45 } as const;
  const [one, other] = [1, 45].map((seed) => simulate({ ...scene, seed, hand: 1, anyRoll: true }));
  expect(one && apartDeg(one, other)).toBeLessThan(7);
  expect(codes(pair(one?.input, other?.input))).not.toContain('measurement/views-apart');
});
