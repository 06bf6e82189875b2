/**
 * The solver on published geometric fits of a circle and an ellipse, and the engine's axes of a circle on that ellipse.
 *
 * Source   W. Gander, G. H. Golub, R. Strebel: Least-squares fitting of circles and ellipses, BIT 34 (1994), 558-578: the six
 *          and the eight points and the geometric fits, from memory (the paper could not be read here; all eleven figures come
 *          out to every digit that was remembered, which chance does not do).
 * Not      the paper's algebraic fits: circle-normals.ts fits its conic after centring and scaling, with coefficients of unit
 *          length, a condition that the paper does not use. Of that code the axes alone can be compared: the plane square to an
 *          axis must cut the cone over the ellipse in a circle.
 */
import { describe, expect, test } from 'vitest';
import { circleNormals } from '../../src/adjustment/circle-normals.ts';
import { type Fitted, levenbergMarquardt } from '../../src/adjustment/levenberg-marquardt.ts';
import type { Vec3 } from '../../src/basics/rotation.ts';
import { add, cos, type Dual, mul, pow, sin, square, sub, unknowns } from './dual.ts';
import { equationsOf } from './small-adjustment.ts';

const X = [1, 2, 5, 7, 9, 3, 6, 8] as const;
const Y = [7, 6, 8, 7, 5, 7, 2, 4] as const;
const TIGHT = { maxIterations: 200, tolerance: 1e-13 };

function fitted(start: readonly number[], residuals: (u: readonly Dual[]) => readonly Dual[]): Fitted {
  const evaluate = (x: Float64Array) =>
    equationsOf(
      x.length,
      residuals(unknowns(x)).map(({ v, d }) => ({ d, residual: v, group: 'marks' as const })),
    );
  return levenbergMarquardt(evaluate, new Float64Array(start), TIGHT);
}

describe('circle through six points', () => {
  test.each([
    ['the published algebraic fit', [5.3794, 7.2532, 3.037]],
    ['elsewhere', [4, 3, 5]],
  ])('from %s: centre (4.7398, 2.9835), radius 4.7142', (_from, start) => {
    const { x, converged } = fitted(start, ([cx, cy, r]) =>
      X.slice(0, 6).map((px, i) =>
        sub(pow(add(square(sub(px, cx as Dual)), square(sub(Y[i] as number, cy as Dual))), 0.5), r as Dual),
      ),
    );
    expect(converged).toBe(true);
    for (const [i, published] of [4.7398, 2.9835, 4.7142].entries()) expect(x[i]).toBeCloseTo(published, 4);
  });
});

/** Centre, semi-axes, turn, and the angle of each point's nearest point: two rows for each point. */
function ellipse(): Fitted {
  const [zx, zy, a, b] = [5, 5, 4, 3];
  const angles = X.map((px, i) => Math.atan2(((Y[i] as number) - zy) / b, (px - zx) / a));
  return fitted([zx, zy, a, b, 0, ...angles], (u) => {
    const [cx, cy, along, across, turn] = u as [Dual, Dual, Dual, Dual, Dual];
    return X.flatMap((px, i) => {
      const angle = u[5 + i] as Dual;
      const [p, q] = [mul(along, cos(angle)), mul(across, sin(angle))];
      return [
        sub(add(cx, sub(mul(cos(turn), p), mul(sin(turn), q))), px),
        sub(add(cy, add(mul(sin(turn), p), mul(cos(turn), q))), Y[i] as number),
      ];
    });
  });
}

describe('ellipse through eight points', () => {
  const { x, chiSquare, converged } = ellipse();

  test('centre (2.6996, 3.8160), semi-axes 6.5187 and 3.0319, turn 0.3596 rad, norm of the distances 1.1719', () => {
    expect(converged).toBe(true);
    for (const [i, published] of [2.6996, 3.816, 6.5187, 3.0319, 0.3596].entries())
      expect(x[i]).toBeCloseTo(published, 4);
    expect(Math.sqrt(chiSquare)).toBeCloseTo(1.1719, 4);
  });

  // A circle's picture, a tenth of its size on the unit image plane: eight points of it that are not the given ones.
  test('a plane square to either axis cuts the cone over it in a circle', () => {
    const [cx = 0, cy = 0, a = 0, b = 0, turn = 0] = x;
    const rays = Array.from({ length: 8 }, (_, i): Vec3 => {
      const [p, q] = [a * Math.cos(0.3 + i), b * Math.sin(0.3 + i)];
      const [px, py] = [Math.cos(turn) * p - Math.sin(turn) * q, Math.sin(turn) * p + Math.cos(turn) * q];
      return [(cx + px) / 10, (cy + py) / 10, 1];
    });
    const normals = circleNormals(rays);
    expect(normals).toHaveLength(2);
    for (const n of normals) {
      const points = rays.map((ray): Vec3 => {
        const scale = 1 / (ray[0] * n[0] + ray[1] * n[1] + ray[2] * n[2]);
        return [ray[0] * scale, ray[1] * scale, ray[2] * scale];
      });
      expect(spreadOfRadii(points)).toBeLessThan(1e-9);
    }
  });
});

/** Of points in one plane: how far they are from one circle, through the first three, as a share of its radius. */
function spreadOfRadii(points: readonly Vec3[]): number {
  const [a, b, c] = points as [Vec3, Vec3, Vec3];
  const minus = (p: Vec3, q: Vec3): Vec3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
  const dot = (p: Vec3, q: Vec3) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  const [u, v] = [minus(b, a), minus(c, a)];
  // Centre a + s u + t v with equal distances from a, b and c.
  const [uu, uv, vv] = [dot(u, u), dot(u, v), dot(v, v)];
  const determinant = 2 * (uu * vv - uv * uv);
  const [s, t] = [(vv * (uu - uv)) / determinant, (uu * (vv - uv)) / determinant];
  const centre: Vec3 = [a[0] + s * u[0] + t * v[0], a[1] + s * u[1] + t * v[1], a[2] + s * u[2] + t * v[2]];
  const radii = points.map((p) => Math.hypot(...minus(p, centre)));
  return (Math.max(...radii) - Math.min(...radii)) / (radii[0] as number);
}
