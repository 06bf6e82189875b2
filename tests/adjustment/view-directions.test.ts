import { expect, test } from 'vitest';
import { Equations } from '../../src/adjustment/equations.ts';
import { poseAt } from '../../src/adjustment/pose.ts';
import type { Problem } from '../../src/adjustment/problem.ts';
import { addViewDirections } from '../../src/adjustment/view-directions.ts';
import { IDENTITY3, rotationAbout } from '../../src/basics/rotation.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';

const PLACES = [0, 6, 12];
/** Two pictures straight at the brake, a third from elsewhere and held on its side. */
const STARTS = [IDENTITY3, rotationAbout(2, 0.3), rotationAbout(2, Math.PI / 2)];
const PICTURES: Problem = {
  cameras: [],
  poseCount: 3,
  views: [],
  references: NO_REFERENCES,
  hand: 1,
  places: 'near',
};

function equationsAt(x: Float64Array, problem = PICTURES): Equations {
  const poses = PLACES.map((at, i) => poseAt(x, at, STARTS[i] ?? IDENTITY3));
  const equations = new Equations(x.length, { rows: 6, entries: 54 });
  addViewDirections(equations, poses, PLACES, problem);
  return equations;
}

function turned(pose: number, axis: number, rad: number): Float64Array {
  const x = new Float64Array(18);
  x[6 * pose + axis] = rad;
  return x;
}

/** Chance of a second picture from farther off: of the t in two dimensions, density f, (f(d) / f(0))^(n / (n + 2)), n = 3. */
function chanceBeyond(apartDeg: number): number {
  const { residuals } = equationsAt(turned(1, 0, (apartDeg * Math.PI) / 180));
  return Math.exp(-((residuals[2] as number) ** 2 + (residuals[3] as number) ** 2) / 2) ** (3 / 5);
}

test('half of all pictures within 9 degrees of the first, 1 in 20 beyond 30, 1 in 100 beyond 54', () => {
  // The components of a direction are the sine of what it is turned by.
  expect(chanceBeyond((Math.asin(0.159) * 180) / Math.PI)).toBeCloseTo(0.5, 2);
  expect(chanceBeyond((Math.asin(0.524) * 180) / Math.PI)).toBeCloseTo(0.05, 3);
  expect(chanceBeyond((Math.asin(0.942) * 180) / Math.PI)).toBeCloseTo(0.01, 3);
});

test('held on its side or upright, a picture from the same place is from the same place', () => {
  for (const residual of equationsAt(new Float64Array(18)).residuals) expect(residual).toBeCloseTo(0, 12);
});

test('each for itself, a picture turned changes its own two equations and no other', () => {
  const x = Float64Array.from({ length: 18 }, (_v, i) => 0.05 * Math.sin(i + 1));
  const aside = x.slice();
  aside[6] = 0.3;
  const [one, other] = [x, aside].map((at) => equationsAt(at, { ...PICTURES, places: 'own' }).residuals);
  expect([...(one ?? [])].flatMap((r, row) => (r === other?.[row] ? [] : [row]))).toEqual([2, 3]);
});

test('filmed: all frames seen from aside are one witness of it, however many; one frame from elsewhere is told', () => {
  const squares = (x: Float64Array) =>
    [...equationsAt(x, { ...PICTURES, places: 'filmed' }).residuals].reduce((sum, r) => sum + r * r, 0);
  const all = new Float64Array(18);
  // About the chamber's x, however each is held.
  for (const [i, held] of [0, 0.3, Math.PI / 2].entries())
    all.set(
      [Math.cos(held), Math.sin(held)].map((part) => part * Math.asin(0.5)),
      PLACES[i],
    );
  expect(Math.sqrt(squares(all))).toBeCloseTo(0.5 / 0.25, 9);
  expect(Math.sqrt(squares(turned(1, 0, Math.asin(0.3))))).toBeCloseTo(Math.hypot(0.3 / 0.1, 0.1 / 0.25), 9);
});

test.each(
  [0, 1e-5, 0.02, 0.9].flatMap((apart) => [
    [apart, 'near'],
    [apart, 'filmed'],
  ]) as readonly [number, Problem['places']][],
)('derivatives are the numeric ones, directions %f rad apart, %s', (apart, places) => {
  const x = Float64Array.from({ length: 18 }, (_, i) => 0.05 * Math.sin(i + 1));
  x.set(x.subarray(0, 3), 6);
  x[7] = (x[7] as number) + apart;
  const equations = equationsAt(x, { ...PICTURES, places });
  for (let i = 0; i < x.length; i++) {
    const [up, down] = [1e-5, -1e-5].map((step) => {
      const beside = x.slice();
      beside[i] = (beside[i] as number) + step;
      return equationsAt(beside, { ...PICTURES, places }).residuals;
    }) as [Float64Array, Float64Array];
    const unit = new Float64Array(x.length);
    unit[i] = 1;
    for (let row = 0; row < equations.rows; row++) {
      const numeric = ((up[row] as number) - (down[row] as number)) / 2e-5;
      expect(Math.abs(equations.rowDot(row, unit) - numeric)).toBeLessThan(1e-5);
    }
  }
});
