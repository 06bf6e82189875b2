/** Light on a painted scene: what each pixel of a region of the picture receives, in linear light. */
import type { SceneDraw } from './assists-paint-draws.ts';
import type { SceneSolids } from './assists-paint-scene.ts';
import {
  add,
  cross,
  dot,
  pointAt,
  type Ray,
  type Solid,
  sub,
  times,
  unit,
  type V,
} from './assists-paint-solids.ts';

export type Eye = {
  readonly at: V;
  readonly forward: V;
  readonly right: V;
  readonly down: V;
  readonly focalPx: number;
};

/** The camera stands at negative z and looks at the rod's way out of the chamber. */
export function eyeOf({ stand: { pxPerMm, distanceMm, yawDeg, liftDeg, rollDeg } }: SceneDraw): Eye {
  const [yaw, lift, roll] = [yawDeg, liftDeg, rollDeg].map((deg) => (deg * Math.PI) / 180) as [
    number,
    number,
    number,
  ];
  const back: V = [Math.sin(yaw) * Math.cos(lift), Math.sin(lift), -Math.cos(yaw) * Math.cos(lift)];
  const at = add([30, 0, 0], times(back, distanceMm));
  const forward = times(back, -1);
  const level = unit(cross(forward, [0, 1, 0]));
  const plumb = cross(forward, level);
  const right = add(times(level, Math.cos(roll)), times(plumb, Math.sin(roll)));
  return { at, forward, right, down: cross(forward, right), focalPx: pxPerMm * distanceMm };
}

export function seenFrom({ at, forward, right, down, focalPx }: Eye, point: V): readonly [number, number] {
  const off = sub(point, at);
  const depth = dot(off, forward);
  return [(focalPx * dot(off, right)) / depth, (focalPx * dot(off, down)) / depth];
}

export type Box = {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
};

/** Three values for each pixel of the box, two by two rays each, or one where pixels are small. */
export function lightOn(scene: SceneDraw, solids: readonly Solid[], eye: Eye, box: Box): Float32Array {
  const perSide = scene.stand.pxPerMm > 4.5 ? 1 : 2;
  const light = new Float32Array(3 * box.widthPx * box.heightPx);
  for (let row = 0, to = 0; row < box.heightPx; row += 1)
    for (let column = 0; column < box.widthPx; column += 1, to += 3)
      for (let ray = 0; ray < perSide * perSide; ray += 1) {
        const x = (box.leftPx + column + ((ray % perSide) + 0.5) / perSide) / eye.focalPx;
        const y = (box.topPx + row + (Math.floor(ray / perSide) + 0.5) / perSide) / eye.focalPx;
        const way = unit(add(eye.forward, add(times(eye.right, x), times(eye.down, y))));
        const got = received(scene, solids, { from: eye.at, way }, true);
        for (let i = 0; i < 3; i += 1) light[to + i] = (light[to + i] ?? 0) + (got[i] ?? 0) / perSide ** 2;
      }
  return light;
}

/**
 * The painted length along the rod that is to be seen, mm, over the part of the rod's width where paint could be told: by rays,
 * so that what hides it counts. A worn band counts with what is left.
 */
export function paintSeenMm({ solids, rod, painted }: SceneSolids, eye: Eye, rodRadiusMm: number): number {
  const toEye = unit([0, eye.at[1], eye.at[2]]);
  const aside = cross([1, 0, 0], toEye);
  const [stepMm, across] = [0.25, [-0.6, -0.3, 0, 0.3, 0.6]];
  let seen = 0;
  for (let xMm = -2; xMm < 45; xMm += stepMm)
    for (const t of across) {
      const round = add(times(toEye, rodRadiusMm * Math.sqrt(1 - t * t)), times(aside, rodRadiusMm * t));
      const at: V = [xMm, round[1], round[2]];
      if (!painted(at)) continue;
      const ray = { from: eye.at, way: unit(sub(at, eye.at)) };
      const met = nearest(solids, ray);
      if (met?.solid === rod && Math.hypot(...sub(pointAt(ray, met.reach), at)) < 0.5)
        seen += stepMm / across.length;
    }
  return seen;
}

function nearest(solids: readonly Solid[], ray: Ray) {
  let best: ReturnType<Solid['meet']> = null;
  let of: Solid | null = null;
  for (const solid of solids) {
    const met = solid.meet(ray);
    if (met && (!best || met.reach < best.reach)) [best, of] = [met, solid];
  }
  return best && of ? { reach: best.reach, normal: best.normal, solid: of } : null;
}

function shadowed(solids: readonly Solid[], from: V, way: V, reachMm: number): boolean {
  if (reachMm <= 0) return false;
  for (const solid of solids) {
    const met = solid.meet({ from, way });
    if (met !== null && met.reach > 0.05 && met.reach < reachMm) return true;
  }
  return false;
}

function received(scene: SceneDraw, solids: readonly Solid[], ray: Ray, mirrors: boolean): V {
  const met = nearest(solids, ray);
  if (!met) return sky(scene, ray.way);
  const at = pointAt(ray, met.reach);
  const { albedo, mirror, gloss, narrow } = met.solid.surface(at);
  const just = add(at, times(met.normal, 0.05));
  let sum = times(sky(scene, met.normal), 0.55);
  let shine: V = [0, 0, 0];
  for (const { way, colour, reachMm } of lampsAt(scene, at, ray)) {
    const facing = dot(met.normal, way);
    if (facing <= 0 || shadowed(solids, just, way, reachMm)) continue;
    sum = add(sum, times(colour, facing));
    const half = unit(sub(way, ray.way));
    shine = add(shine, times(colour, gloss * Math.max(0, dot(half, met.normal)) ** narrow));
  }
  const body: V = [sum[0] * albedo[0], sum[1] * albedo[1], sum[2] * albedo[2]];
  if (mirror <= 0.02 || !mirrors) return add(body, shine);
  const way = sub(ray.way, times(met.normal, 2 * dot(ray.way, met.normal)));
  const back = received(scene, solids, { from: just, way }, false);
  const metal: V = [back[0] * albedo[0], back[1] * albedo[1], back[2] * albedo[2]];
  return add(add(times(body, 1 - mirror), times(metal, 1.6 * mirror)), shine);
}

function lampsAt({ light }: SceneDraw, at: V, ray: Ray) {
  const lamps: { way: V; colour: V; reachMm: number }[] = [];
  if (light.sun > 0)
    lamps.push({ way: unit(light.sunFrom), colour: times(light.tint, light.sun), reachMm: 1e4 });
  // Beside the camera: what it lights is what is seen.
  if (light.lamp > 0)
    lamps.push({ way: times(ray.way, -1), colour: times(light.tint, light.lamp), reachMm: 0 });
  if (light.glow > 0) {
    const to = sub(light.glowFrom, at);
    const far = Math.hypot(...to);
    const colour = times([1, 0.06, 0.03], light.glow * (160 / far) ** 2);
    lamps.push({ way: times(to, 1 / far), colour, reachMm: far });
  }
  return lamps;
}

function sky({ light, seed }: SceneDraw, way: V): V {
  const up = 0.5 + 0.5 * way[1];
  const blue = 1 + light.skyBlue * up;
  const patch = 0.75 + 0.25 * Math.sin(3 * way[0] + seed) * Math.sin(4 * way[2] + 2 * seed);
  const level = (0.25 + 0.75 * up) * patch;
  return [light.tint[0] * level, light.tint[1] * level, light.tint[2] * level * blue];
}
