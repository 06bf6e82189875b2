/**
 * Start values for the clamp band: where its rim lies along the axis, and the angle of each marked point round it.
 *
 * Model    for each of a few usual places of the rim, the nearest of an arc of projected rim points to every mark; the place
 *          with the smallest sum of squares is taken. The arc is the part of the rim that faces the camera.
 */
import type { Mat3, Vec3 } from '../basics/rotation.ts';
import type { Layout } from './layout.ts';
import { BAND_ALONG } from './priors.ts';
import type { Problem, ProblemView } from './problem.ts';
import { normalisedRay } from './start-rays.ts';

const PLACES = [BAND_ALONG[0] + 40, BAND_ALONG[0], BAND_ALONG[0] - 40];
const RING = 72;
/** Half the arc that is searched: the half that faces the camera. Beyond it, a rim seen nearly edge on has its far half where its near
 * one is, and marks would start on either. */
const ARC_RAD = Math.PI / 2;

/** Angle round the chamber axis, from y towards z, at which the rim faces the camera. */
export function facingAngle(rotation: Mat3, translation: Vec3): number {
  const y = rotation[1] * translation[0] + rotation[4] * translation[1] + rotation[7] * translation[2];
  const z = rotation[2] * translation[0] + rotation[5] * translation[1] + rotation[8] * translation[2];
  return Math.atan2(-z, -y);
}

/** Angle from one direction to another, -pi .. pi. */
export function turnedBy(angle: number, from: number): number {
  return angle - from - 2 * Math.PI * Math.round((angle - from) / (2 * Math.PI));
}

export function bandAngles(
  problem: Problem,
  layout: Layout,
  viewIndex: number,
  x: Float64Array,
  rotations: readonly Mat3[],
): void {
  const band = problem.references.clampBand;
  const view = problem.views[viewIndex] as ProblemView;
  const marks = view.marks.filter((m) => m.kind === 'clamp-band');
  if (!band || layout.band === null) return;
  x[layout.band + 1] = band.diameterMm;
  // The first view that shows the band says where it is; the others follow.
  const decided = problem.views.slice(0, viewIndex).some((v) => v.marks.some((m) => m.kind === 'clamp-band'));
  const places = decided ? [x[layout.band] as number] : PLACES;
  if (marks.length === 0) {
    if (!decided) x[layout.band] = BAND_ALONG[0];
    return;
  }
  const at = (layout.poses[view.pose] as number) + 3;
  const translation: Vec3 = [x[at] as number, x[at + 1] as number, x[at + 2] as number];
  const camera = problem.cameras[view.camera] as Problem['cameras'][number];
  const rays = marks.map((mark) => normalisedRay(camera, mark));
  let best = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const ring = projectedRing(place, band.diameterMm / 2, rotations[view.pose] as Mat3, translation);
    const nearest = rays.map((ray) => nearestOnRing(ring, ray));
    const sum = nearest.reduce((acc, n) => acc + n.squared, 0);
    if (sum >= best) continue;
    best = sum;
    x[layout.band] = place;
    marks.forEach((mark, i) => {
      x[layout.nuisance.get(mark.id) as number] = nearest[i]?.angle ?? 0;
    });
  }
}

/** Column by column: the rim is projected and searched for every start. */
type Ring = {
  readonly angles: readonly number[];
  readonly a: readonly number[];
  readonly b: readonly number[];
};

function projectedRing(placeMm: number, radiusMm: number, r: Mat3, t: Vec3): Ring {
  const facing = facingAngle(r, t);
  const angles: number[] = [];
  const a: number[] = [];
  const b: number[] = [];
  for (let i = 0; i <= RING; i++) {
    const angle = facing + ARC_RAD * ((2 * i) / RING - 1);
    const y = radiusMm * Math.cos(angle);
    const z = radiusMm * Math.sin(angle);
    const depth = Math.max(r[6] * placeMm + r[7] * y + r[8] * z + t[2], 1);
    angles.push(angle);
    a.push((r[0] * placeMm + r[1] * y + r[2] * z + t[0]) / depth);
    b.push((r[3] * placeMm + r[4] * y + r[5] * z + t[1]) / depth);
  }
  return { angles, a, b };
}

function nearestOnRing({ angles, a, b }: Ring, ray: Vec3) {
  let squared = Number.POSITIVE_INFINITY;
  let angle = 0;
  for (let i = 0; i <= RING; i++) {
    const da = (a[i] as number) - ray[0];
    const db = (b[i] as number) - ray[1];
    const here = da * da + db * db;
    if (here >= squared) continue;
    squared = here;
    angle = angles[i] as number;
  }
  return { squared, angle };
}
