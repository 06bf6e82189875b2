// @ts-check
/**
 * A plate between two discs and their common outer tangents, from z = back to z = front.
 * @param {readonly [number, number]} a @param {number} ra @param {readonly [number, number]} b @param {number} rb @param {number} back @param {number} front
 */
export function slab(a, ra, b, rb, back, front) {
  const apart = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const heading = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const tilt = Math.acos((ra - rb) / apart);
  const corner = (
    /** @type {readonly [number, number]} */ [x, y],
    /** @type {number} */ r,
    /** @type {number} */ side,
  ) =>
    `<${(x + r * Math.cos(heading + side * tilt)).toFixed(5)}, ${(y + r * Math.sin(heading + side * tilt)).toFixed(5)}>`;
  const corners = [
    corner(a, ra, 1),
    corner(b, rb, 1),
    corner(b, rb, -1),
    corner(a, ra, -1),
    corner(a, ra, 1),
  ];
  return `cylinder { <${a.join(', ')}, ${back}>, <${a.join(', ')}, ${front}>, ${ra} } cylinder { <${b.join(', ')}, ${back}>, <${b.join(', ')}, ${front}>, ${rb} }
    prism { linear_sweep linear_spline ${back}, ${front}, 5, ${corners.join(', ')} matrix <1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0> }`;
}
