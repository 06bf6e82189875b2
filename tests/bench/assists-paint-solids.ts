/**
 * Solids of a painted scene, in the chamber frame (mm): where a ray meets them. Written for the study alone; nothing of the
 * judge's model is used.
 */
export type V = readonly [number, number, number];
export type Ray = { readonly from: V; readonly way: V };

/** What a surface is at a point: reflectance of red, green and blue in linear light, and how it shines. */
export type Surface = {
  readonly albedo: V;
  /** Part of the light that is mirrored as from metal, in the metal's own colour. */
  readonly mirror: number;
  /** Strength of the highlight, and how narrow it is. */
  readonly gloss: number;
  readonly narrow: number;
};

export type Solid = {
  readonly meet: (ray: Ray) => { readonly reach: number; readonly normal: V } | null;
  readonly surface: (at: V) => Surface;
};

const NEAREST = 1e-3;

export const add = (a: V, b: V): V => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: V, k: number): V => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const unit = (a: V): V => times(a, 1 / Math.max(1e-12, Math.hypot(a[0], a[1], a[2])));
export const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const pointAt = ({ from, way }: Ray, reach: number): V => add(from, times(way, reach));

/** A round bar between two points, with round ends where asked for. */
export function bar(a: V, b: V, radius: number, surface: Solid['surface'], round = false): Solid {
  const axis = unit(sub(b, a));
  const length = Math.hypot(...sub(b, a));
  return {
    surface,
    meet: (ray) => {
      // Written out: nearly all of a scene's time is spent here.
      const ax = axis[0];
      const ay = axis[1];
      const az = axis[2];
      const fx = ray.from[0] - a[0];
      const fy = ray.from[1] - a[1];
      const fz = ray.from[2] - a[2];
      const wx = ray.way[0];
      const wy = ray.way[1];
      const wz = ray.way[2];
      const fa = fx * ax + fy * ay + fz * az;
      const wa = wx * ax + wy * ay + wz * az;
      const ox = fx - fa * ax;
      const oy = fy - fa * ay;
      const oz = fz - fa * az;
      const vx = wx - wa * ax;
      const vy = wy - wa * ay;
      const vz = wz - wa * az;
      const qa = vx * vx + vy * vy + vz * vz;
      const qb = ox * vx + oy * vy + oz * vz;
      const under = qb * qb - qa * (ox * ox + oy * oy + oz * oz - radius * radius);
      if (under > 0 && qa > 1e-12) {
        const reach = (-qb - Math.sqrt(under)) / qa;
        const along = fa + reach * wa;
        if (reach > NEAREST && along >= 0 && along <= length)
          return {
            reach,
            normal: [(ox + vx * reach) / radius, (oy + vy * reach) / radius, (oz + vz * reach) / radius],
          };
      }
      // A line that misses the endless bar misses its ends too.
      if (under <= 0 && qa > 1e-12) return null;
      const from: V = [fx, fy, fz];
      if (!round) return flatEnd(ray, from, axis, length, radius);
      return nearer(ball(ray, a, radius), ball(ray, b, radius));
    },
  };
}

function flatEnd(ray: Ray, from: V, axis: V, length: number, radius: number): ReturnType<Solid['meet']> {
  const wa = dot(ray.way, axis);
  const end = wa < 0 ? length : 0;
  const reach = (end - dot(from, axis)) / wa;
  if (!(reach > NEAREST)) return null;
  const at = add(from, times(ray.way, reach));
  const off = sub(at, times(axis, dot(at, axis)));
  return dot(off, off) <= radius * radius ? { reach, normal: times(axis, wa < 0 ? 1 : -1) } : null;
}

function ball(ray: Ray, centre: V, radius: number): ReturnType<Solid['meet']> {
  const from = sub(ray.from, centre);
  const b = dot(from, ray.way);
  const under = b * b - (dot(from, from) - radius * radius);
  if (under <= 0) return null;
  const reach = -b - Math.sqrt(under);
  return reach > NEAREST ? { reach, normal: times(add(from, times(ray.way, reach)), 1 / radius) } : null;
}

type Met = ReturnType<Solid['meet']>;
const nearer = (a: Met, b: Met): Met => (!a ? b : !b ? a : a.reach < b.reach ? a : b);

/** Flat, of the points for which `within` holds. */
export function flat(at: V, normal: V, within: (point: V) => boolean, surface: Solid['surface']): Solid {
  return {
    surface,
    meet: (ray) => {
      const turned = dot(ray.way, normal);
      if (Math.abs(turned) < 1e-9) return null;
      const reach = dot(sub(at, ray.from), normal) / turned;
      if (!(reach > NEAREST) || !within(pointAt(ray, reach))) return null;
      return { reach, normal: turned < 0 ? normal : times(normal, -1) };
    },
  };
}

/** A bent bar: hose, finger. */
export function bent(points: readonly V[], radius: number, surface: Solid['surface']): Solid {
  const pieces = points.slice(1).map((to, i) => bar(points[i] as V, to, radius, surface, true));
  return {
    surface,
    meet: (ray) => pieces.reduce<Met>((best, piece) => nearer(best, piece.meet(ray)), null),
  };
}
