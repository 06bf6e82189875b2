/**
 * Where a point of the printed target is in the chamber frame, and how far the target's plane is from the pin's end.
 *
 * Model    in the frame (x, h y, h z), whose third axis runs away from the camera for either hand h:
 *          p = o + s Rz(a) q,  q = u (cos b, 0, sin b) + v (-sin b sin c, cos c, cos b sin c)
 *          gap = n . (pin - o),  n = Rz(a) (-sin b cos c, -sin c, cos b cos c)
 *          o, a, b, c: unknowns of the target's hold, o as x, h y, depth; s: scale of the print; u, v: target-card.ts.
 *          a turns clockwise in the picture from the rod's outward direction.
 * Assumes  the target is flat.
 */
import { dot, type Vec3 } from '../basics/rotation.ts';
import { targetCorner } from '../references/target-card.ts';
import type { Layout } from './layout.ts';
import type { WorldPoint } from './world-point.ts';

/** null for a corner that the card does not have, or where the target is not in use. into: overwritten and returned. */
export function targetPoint(
  mark: { readonly marker: number; readonly corner: number },
  at: number | null | undefined,
  x: ArrayLike<number>,
  layout: Layout,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint | null {
  const corner = targetCorner(mark.marker, mark.corner);
  if (!corner || at === null || at === undefined || layout.targetScale === null) return null;
  const { uMm: u, vMm: v } = corner;
  const { ca, sa, sb, cb, sc, cc } = anglesAt(x, at);
  const scale = x[layout.targetScale] as number;
  const [qx, qy, qz] = [u * cb - v * sb * sc, v * cc, u * sb + v * cb * sc];
  const [seenX, seenY] = [ca * qx - sa * qy, sa * qx + ca * qy];
  const bx = -u * sb - v * cb * sc;
  const [cx, cy, cz] = [-v * sb * cc, -v * sc, v * cb * cc];
  // From the picture's sense of y and z to the chamber frame's.
  const handed = hand * scale;
  into.place(
    (x[at] as number) + scale * seenX,
    hand * ((x[at + 1] as number) + scale * seenY),
    hand * ((x[at + 2] as number) + scale * qz),
  );
  into.by(at, 1, 0, 0);
  into.by(at + 1, 0, hand, 0);
  into.by(at + 2, 0, 0, hand);
  into.by(at + 3, -scale * seenY, handed * seenX, 0);
  into.by(at + 4, scale * ca * bx, handed * sa * bx, handed * qx);
  into.by(at + 5, scale * (ca * cx - sa * cy), handed * (sa * cx + ca * cy), handed * cz);
  into.by(layout.targetScale, seenX, hand * seenY, hand * qz);
  return into;
}

export type PinGap = {
  readonly gapMm: number;
  readonly by: readonly { readonly index: number; readonly d: number }[];
};

/** Depth of the pin's end behind the target's plane. pin: index of the pin's x, y in its state. */
export function targetGap(
  at: number,
  pin: number,
  x: ArrayLike<number>,
  layout: Layout,
  hand: 1 | -1,
): PinGap {
  const { turn, sb, cb, sc, cc } = anglesAt(x, at);
  const n = turn([-sb * cc, -sc, cb * cc]);
  const off: Vec3 = [
    (x[pin] as number) - (x[at] as number),
    hand * (x[pin + 1] as number) - (x[at + 1] as number),
    (x[layout.pinDepth] as number) - (x[at + 2] as number),
  ];
  return {
    gapMm: dot(n, off),
    by: [
      { index: pin, d: n[0] },
      { index: pin + 1, d: hand * n[1] },
      { index: layout.pinDepth, d: n[2] },
      { index: at, d: -n[0] },
      { index: at + 1, d: -n[1] },
      { index: at + 2, d: -n[2] },
      { index: at + 3, d: dot([-n[1], n[0], 0], off) },
      { index: at + 4, d: dot(turn([-cb * cc, 0, -sb * cc]), off) },
      { index: at + 5, d: dot(turn([sb * sc, -cc, -cb * sc]), off) },
    ],
  };
}

function anglesAt(x: ArrayLike<number>, at: number) {
  const [a, b, c] = [x[at + 3] as number, x[at + 4] as number, x[at + 5] as number];
  const [ca, sa] = [Math.cos(a), Math.sin(a)];
  return {
    ca,
    sa,
    turn: ([px, py, pz]: Vec3): Vec3 => [ca * px - sa * py, sa * px + ca * py, pz],
    sb: Math.sin(b),
    cb: Math.cos(b),
    sc: Math.sin(c),
    cc: Math.cos(c),
  };
}
