/** A simulated camera in a moving hand, and the way back from its picture: from the drawing and not from the engine. */
import { type Camera, type CameraPose, imageOf, type P3 } from './sight.ts';

export type { Camera, CameraPose, P3 };

/** Turned by small angles about the camera's own axes, and moved. */
export function turned({ rows, t }: CameraPose, [a, b, c]: P3, move: P3): CameraPose {
  const [ca, sa] = [Math.cos(a), Math.sin(a)];
  const [cb, sb] = [Math.cos(b), Math.sin(b)];
  const [cc, sc] = [Math.cos(c), Math.sin(c)];
  const about = (p: P3): P3 => {
    const q: P3 = [p[0], ca * p[1] - sa * p[2], sa * p[1] + ca * p[2]];
    const r: P3 = [cb * q[0] + sb * q[2], q[1], -sb * q[0] + cb * q[2]];
    return [cc * r[0] - sc * r[1], sc * r[0] + cc * r[1], r[2]];
  };
  const column = (j: 0 | 1 | 2): P3 => about([rows[0][j], rows[1][j], rows[2][j]]);
  const [x, y, z] = [column(0), column(1), column(2)];
  const moved = about(t);
  return {
    rows: [
      [x[0], y[0], z[0]],
      [x[1], y[1], z[1]],
      [x[2], y[2], z[2]],
    ],
    t: [moved[0] + move[0], moved[1] + move[1], moved[2] + move[2]],
  };
}

/** The point of the plane z = zMm that is seen at a place of the picture; near: where to begin. */
export function seenInPlane(
  camera: Camera,
  pose: CameraPose,
  place: readonly [number, number],
  near: P3,
): P3 {
  let [x, y] = near;
  const z = near[2];
  for (let round = 0; round < 8; round++) {
    const [u, v] = imageOf(camera, pose, [x, y, z]);
    const [ux, vx] = imageOf(camera, pose, [x + 0.01, y, z]);
    const [uy, vy] = imageOf(camera, pose, [x, y + 0.01, z]);
    const [a, b, c, d] = [(ux - u) / 0.01, (uy - u) / 0.01, (vx - v) / 0.01, (vy - v) / 0.01];
    const [p, q] = [place[0] - u, place[1] - v];
    const det = a * d - b * c;
    x += (d * p - b * q) / det;
    y += (a * q - c * p) / det;
  }
  return [x, y, z];
}
