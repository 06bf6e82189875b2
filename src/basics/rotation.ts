/**
 * Vectors and rotations in three dimensions.
 *
 * Model    R(w) = exp([w]x), w the rotation vector in rad (Rodrigues); the change of R(w) X by a small change dw of w is
 *          -[R X]x J(w) dw with the left Jacobian J(w) = I + (1 - cos a)/a^2 [w]x + (a - sin a)/a^3 [w]x^2, a = |w|.
 * Assumes  3 x 3 matrices row by row.
 * Source   Sola et al., A micro Lie theory for state estimation in robotics, 2018, eq. 145 (equation number from memory).
 */
export type Vec3 = readonly [x: number, y: number, z: number];
export type Mat3 = readonly [number, number, number, number, number, number, number, number, number];

export const IDENTITY3: Mat3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Of nothing, nothing. */
export function unit(v: Vec3): Vec3 {
  const length = Math.hypot(...v) || 1;
  return [v[0] / length, v[1] / length, v[2] / length];
}

export function rotate(m: Mat3, v: Vec3): Vec3 {
  return [
    m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
    m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
    m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
  ];
}

export function multiply(a: Mat3, b: Mat3): Mat3 {
  const c0 = rotate(a, [b[0], b[3], b[6]]);
  const c1 = rotate(a, [b[1], b[4], b[7]]);
  const c2 = rotate(a, [b[2], b[5], b[8]]);
  return [c0[0], c1[0], c2[0], c0[1], c1[1], c2[1], c0[2], c1[2], c2[2]];
}

export function transpose(m: Mat3): Mat3 {
  return [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];
}

export function rotationFromVector(w: Vec3): Mat3 {
  const [c1, c2] = rodriguesFactors(w);
  return skewPolynomial(w, c1, c2);
}

/** Left Jacobian of the exponential map at w. */
export function leftJacobian(w: Vec3): Mat3 {
  const a = Math.hypot(w[0], w[1], w[2]);
  const small = a < 1e-4;
  const c1 = small ? 0.5 - (a * a) / 24 : (1 - Math.cos(a)) / (a * a);
  const c2 = small ? 1 / 6 - (a * a) / 120 : (a - Math.sin(a)) / (a * a * a);
  return skewPolynomial(w, c1, c2);
}

/** Rotation about one axis of the frame: 0 x, 1 y, 2 z. */
export function rotationAbout(axis: 0 | 1 | 2, rad: number): Mat3 {
  return rotationFromVector([axis === 0 ? rad : 0, axis === 1 ? rad : 0, axis === 2 ? rad : 0]);
}

function rodriguesFactors(w: Vec3): readonly [number, number] {
  const a = Math.hypot(w[0], w[1], w[2]);
  if (a < 1e-4) return [1 - (a * a) / 6, 0.5 - (a * a) / 24];
  return [Math.sin(a) / a, (1 - Math.cos(a)) / (a * a)];
}

/** I + c1 [w]x + c2 [w]x^2. */
function skewPolynomial([x, y, z]: Vec3, c1: number, c2: number): Mat3 {
  return [
    1 - c2 * (y * y + z * z),
    c2 * x * y - c1 * z,
    c2 * x * z + c1 * y,
    c2 * x * y + c1 * z,
    1 - c2 * (x * x + z * z),
    c2 * y * z - c1 * x,
    c2 * x * z - c1 * y,
    c2 * y * z + c1 * x,
    1 - c2 * (x * x + y * y),
  ];
}
