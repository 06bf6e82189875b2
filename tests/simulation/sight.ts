/** Simulated cameras and where they stand: pinhole with radial distortion, from the drawing and not from the engine. */
import type { Draw } from '../../src/basics/random.ts';
import type { SceneOptions } from './scene-options.ts';

export type P3 = readonly [number, number, number];

export type Camera = ReturnType<typeof drawPlainCamera> & { readonly k2: number };

/** extra: what a calibrated camera adds. Its lens may be any: the profile knows it. */
export function drawCamera(draw: Draw, extra: Draw, options: SceneOptions): Camera {
  const plain = drawPlainCamera(draw, options);
  if (!options.profile) return { ...plain, k2: 0 };
  return { ...plain, k1: extra.normal(0, 0.08), k2: extra.normal(0, 0.03) };
}

function drawPlainCamera(draw: Draw, options: SceneOptions) {
  const widthPx = options.widthPx ?? 1920;
  const heightPx = options.heightPx ?? 1080;
  const longer = Math.max(widthPx, heightPx);
  const [low, high] = options.focalOverWidth ?? [0.7, 0.85];
  const focalPx = longer * draw.uniform(low, high);
  const diagonal = Math.hypot(widthPx, heightPx);
  const statedFocal35 = (focalPx / diagonal) * Math.hypot(36, 24) * Math.exp(draw.normal(0, 0.03));
  return {
    widthPx,
    heightPx,
    focalPx,
    focal35Mm: options.focalKnown === false ? null : statedFocal35,
    centre: [
      widthPx / 2 + draw.normal(0, 0.01 * longer),
      heightPx / 2 + draw.normal(0, 0.01 * longer),
    ] as const,
    k1: options.distortion === false ? 0 : draw.normal(0, options.k1Scatter ?? 0.02),
  };
}

export type CameraPose = { readonly rows: readonly [P3, P3, P3]; readonly t: P3 };

export function drawPose(draw: Draw, options: SceneOptions, hand: 1 | -1): CameraPose {
  const off = ((options.offSquareDeg ?? 25) * Math.PI) / 180;
  const yaw = draw.uniform(-off, off);
  const pitch = draw.uniform(-off, off);
  const roll = options.anyRoll ? draw.uniform(-Math.PI, Math.PI) : draw.normal(0, 0.2);
  const [near, far] = options.distanceMm ?? [500, 1000];
  const distance = draw.uniform(near, far);
  const base: readonly [P3, P3, P3] = [
    [1, 0, 0],
    [0, hand, 0],
    [0, 0, hand],
  ];
  const rows = times(aboutZ(roll), times(aboutY(yaw), times(aboutX(pitch), base)));
  // The camera looks at a point near the middle of rod and arm.
  const target: P3 = [draw.uniform(40, 130), draw.uniform(0, 70), 0];
  const aside = options.aside ?? [0, 0];
  const [tx, ty, tz] = apply(rows, target);
  return {
    rows,
    t: [
      (draw.normal(0, 0.03) + aside[0]) * distance - tx,
      (draw.normal(0, 0.03) + aside[1]) * distance - ty,
      distance - tz,
    ],
  };
}

export function jittered(draw: Draw, pose: CameraPose): CameraPose {
  const small = times(
    aboutZ(draw.normal(0, 0.05)),
    times(aboutY(draw.normal(0, 0.06)), aboutX(draw.normal(0, 0.06))),
  );
  const t = apply(small, pose.t);
  const d = t[2];
  return {
    rows: times(small, pose.rows),
    t: [
      t[0] * 0.3 + draw.normal(0, 0.03) * d,
      t[1] * 0.3 + draw.normal(0, 0.03) * d,
      d * (1 + draw.normal(0, 0.06)),
    ],
  };
}

export function imageOf(camera: Camera, pose: CameraPose, at: P3): readonly [number, number] {
  const p = apply(pose.rows, at);
  const z = p[2] + pose.t[2];
  const [a, b] = [(p[0] + pose.t[0]) / z, (p[1] + pose.t[1]) / z];
  const q = a * a + b * b;
  const d = 1 + camera.k1 * q + camera.k2 * q * q;
  return [camera.centre[0] + camera.focalPx * d * a, camera.centre[1] + camera.focalPx * d * b];
}

type Rows = readonly [P3, P3, P3];

function apply(m: Rows, p: P3): P3 {
  const row = (r: P3) => r[0] * p[0] + r[1] * p[1] + r[2] * p[2];
  return [row(m[0]), row(m[1]), row(m[2])];
}

function times(a: Rows, b: Rows): Rows {
  const column = (j: 0 | 1 | 2): P3 => apply(a, [b[0][j], b[1][j], b[2][j]]);
  const [c0, c1, c2] = [column(0), column(1), column(2)];
  return [
    [c0[0], c1[0], c2[0]],
    [c0[1], c1[1], c2[1]],
    [c0[2], c1[2], c2[2]],
  ];
}

function aboutX(r: number): Rows {
  return [
    [1, 0, 0],
    [0, Math.cos(r), -Math.sin(r)],
    [0, Math.sin(r), Math.cos(r)],
  ];
}

function aboutY(r: number): Rows {
  return [
    [Math.cos(r), 0, Math.sin(r)],
    [0, 1, 0],
    [-Math.sin(r), 0, Math.cos(r)],
  ];
}

function aboutZ(r: number): Rows {
  return [
    [Math.cos(r), -Math.sin(r), 0],
    [Math.sin(r), Math.cos(r), 0],
    [0, 0, 1],
  ];
}
