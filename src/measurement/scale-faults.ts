/**
 * Why a set of views has no scale. Sizes that are only usual (a pin's depth, an arm nobody read) are no scale: without one
 * reference that was stated and marked there is no number.
 */
import type { MarkKind } from '../marks/mark.ts';
import type { View } from '../marks/view.ts';
import type { References } from '../references/reference.ts';
import type { MeasurementFailure } from './measurement.ts';

/** A circle of known size seen at an angle has five free image parameters. */
const LEAST_BAND_POINTS = 5;

/** A diameter known no better than this is no scale. */
const LEAST_KNOWN_SHARE = 0.05;

/** Two markers: one alone is too small to tell its tilt. */
const LEAST_TARGET_CORNERS = 8;

export function scaleFault(views: readonly View[], references: References): MeasurementFailure | null {
  const most = (kind: MarkKind): number =>
    Math.max(...views.map((view) => view.marks.filter((mark) => mark.kind === kind).length));
  const { tape, target, clampBand, armLength, distance } = references;
  const faults: MeasurementFailure[] = [];
  if (tape) {
    const readings = views.map(
      ({ marks }) => new Set(marks.flatMap((m) => (m.kind === 'tape-graduation' ? [m.readingMm] : []))).size,
    );
    const have = Math.max(...readings);
    if (have >= 2) return null;
    faults.push({ code: 'measurement/too-few-points', kind: 'tape-graduation', have, need: 2 });
  }
  if (target) {
    const have = most('target-corner');
    if (have >= LEAST_TARGET_CORNERS) return null;
    faults.push({
      code: 'measurement/too-few-points',
      kind: 'target-corner',
      have,
      need: LEAST_TARGET_CORNERS,
    });
  }
  // A band of unknown diameter shows the direction of view only.
  if (clampBand && clampBand.uDiameterMm < LEAST_KNOWN_SHARE * clampBand.diameterMm) {
    const have = most('clamp-band');
    if (have >= LEAST_BAND_POINTS) return null;
    faults.push({ code: 'measurement/too-few-points', kind: 'clamp-band', have, need: LEAST_BAND_POINTS });
  }
  if (distance) {
    const have = most('distance-end');
    if (have >= 2) return null;
    faults.push({ code: 'measurement/too-few-points', kind: 'distance-end', have, need: 2 });
  }
  if (armLength) {
    if (most('camshaft-end') > 0) return null;
    faults.push({ code: 'measurement/mark-missing', state: 'released', kind: 'camshaft-end' });
  }
  return faults[0] ?? { code: 'measurement/no-scale' };
}
