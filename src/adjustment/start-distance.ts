/**
 * Distance from camera to brake, from the size that a reference has in the picture.
 *
 * Model    distance = size (mm) x foreshortening / image size (image size over focal length). A view without a reference
 *          of its own takes its distance from a view that has one, by the image size of what both show.
 * Fails    null where no view has a reference in use.
 */
import type { Mat3 } from '../basics/rotation.ts';
import type { Mark, MarkKind } from '../marks/mark.ts';
import { CHECK_LINE_MM, targetCorner } from '../references/target-card.ts';
import { lineThrough } from './line-fit.ts';
import { ARM_LENGTH } from './priors.ts';
import type { Problem, ProblemView } from './problem.ts';
import { normalisedRay } from './start-rays.ts';

/** Millimetres, by view; rotation: the assumed camera_from_chamber. */
export function distanceToObject(problem: Problem, rotation: Mat3): readonly number[] | null {
  const own = problem.views.map((view) => ownDistance(problem, view, rotation));
  const source = own.findIndex((distance) => distance !== null);
  if (source < 0) return null;
  const known = own[source] as number;
  const sizes = problem.views.map((view) => imageSize(problem, view));
  return own.map(
    (distance, i) => distance ?? (known * (sizes[source] ?? 1)) / (sizes[i] ?? sizes[source] ?? 1),
  );
}

function ownDistance(problem: Problem, view: ProblemView, rotation: Mat3): number | null {
  const { tape, target, distance, clampBand, armLength } = problem.references;
  // Share of a length along x, and along y, that stands across the optical axis.
  const along = Math.hypot(rotation[0], rotation[3]);
  const across = Math.hypot(rotation[1], rotation[4]);
  const camera = problem.cameras[view.camera] as Problem['cameras'][number];
  const of = (kind: MarkKind): Mark[] => view.marks.filter((m) => m.kind === kind);
  const rays = (marks: readonly Mark[]) =>
    marks.map((m) => {
      const [a, b] = normalisedRay(camera, m);
      return { xMm: a, yMm: b };
    });
  if (tape) {
    const marks = of('tape-graduation');
    const readings = marks.flatMap((m) => (m.kind === 'tape-graduation' ? [m.readingMm] : []));
    if (new Set(readings).size >= 2) return positive(along / lineThrough(rays(marks), readings).scale);
  }
  if (target) {
    const marks = of('target-corner');
    const places = marks.flatMap((m) => {
      const corner = m.kind === 'target-corner' ? targetCorner(m.marker, m.corner) : null;
      return corner ? [{ xMm: corner.uMm, yMm: corner.vMm }] : [];
    });
    const size = widest(rays(marks));
    if (places.length > 3 && size > 0)
      return positive(((target.checkMm / CHECK_LINE_MM) * widest(places) * along) / size);
  }
  if (distance) {
    const size = widest(rays(of('distance-end')));
    if (size > 0) return positive(distance.distanceMm / size);
  }
  if (clampBand) {
    const marks = of('clamp-band');
    if (marks.length >= 3) return positive(clampBand.diameterMm / widest(rays(marks)));
  }
  if (armLength) {
    const size = widest(rays([...of('clevis-pin'), ...of('camshaft-end')]));
    if (size > 0) return positive((armLength.lengthMm * across) / size);
  }
  return null;
}

/** Size in the picture of what every view shows: face to camshaft end, else face to pin. */
function imageSize(problem: Problem, view: ProblemView): number | null {
  const camera = problem.cameras[view.camera] as Problem['cameras'][number];
  const everyView = (kind: MarkKind) => problem.views.every((v) => v.marks.some((m) => m.kind === kind));
  const other: MarkKind = everyView('camshaft-end') ? 'camshaft-end' : 'clevis-pin';
  const pair = (['chamber-face', other] as const).flatMap(
    (kind) => view.marks.find((m) => m.kind === kind) ?? [],
  );
  const size = widest(
    pair.map((m) => {
      const [a, b] = normalisedRay(camera, m);
      return { xMm: a, yMm: b };
    }),
  );
  return size > 0 ? size : null;
}

function widest(points: readonly { readonly xMm: number; readonly yMm: number }[]): number {
  let size = 0;
  for (const p of points)
    for (const q of points) size = Math.max(size, Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm));
  return size;
}

/** Held within reach of a person and a lens, so that a nonsense mark gives a poor start and not an overflow. */
function positive(distanceMm: number): number {
  return Math.min(Math.max(Number.isFinite(distanceMm) ? distanceMm : 10 * ARM_LENGTH[0], 100), 20_000);
}
