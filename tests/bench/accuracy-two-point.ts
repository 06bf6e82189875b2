/**
 * The stroke as people take it from two pictures without any model: one scale factor in each picture.
 *
 * Model    stroke = s_a d_a - s_r d_r; d: pixels from face to pin, s: mm over pixels between the two marks of the reference that
 *          are farthest apart. Of several references the one laid along the rod is taken, then the band, then the arm.
 *          Marks made several times count with their mean.
 */
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import type { References } from '../../src/references/reference.ts';
import { CHECK_LINE_MM, targetCorner } from '../../src/references/target-card.ts';

export function twoPointStrokeMm({ views, references }: MeasureInput): number {
  const lengthMm = (state: View['state']): number => {
    const view = views.find((v) => v.state === state);
    if (!view) throw new Error(`No ${state} view`);
    return faceToPinPx(view.marks) * mmPerPx(view.marks, references);
  };
  return lengthMm('applied') - lengthMm('released');
}

function faceToPinPx(marks: readonly Mark[]): number {
  return distancePx(meanOf(marks, 'chamber-face'), meanOf(marks, 'clevis-pin'));
}

function mmPerPx(marks: readonly Mark[], references: References): number {
  const { tape, target, clampBand, armLength, distance } = references;
  if (tape)
    return fromFarthest(marks, 'tape-graduation', (a, b) =>
      a.kind === 'tape-graduation' && b.kind === 'tape-graduation' ? Math.abs(a.readingMm - b.readingMm) : 0,
    );
  if (target) return fromFarthest(marks, 'target-corner', (a, b) => cornersMm(a, b, target.checkMm));
  if (clampBand) return fromFarthest(marks, 'clamp-band', () => clampBand.diameterMm);
  if (armLength)
    return armLength.lengthMm / distancePx(meanOf(marks, 'clevis-pin'), meanOf(marks, 'camshaft-end'));
  if (distance) return fromFarthest(marks, 'distance-end', () => distance.distanceMm);
  throw new Error('No reference');
}

function cornersMm(a: Mark, b: Mark, checkMm: number): number {
  if (a.kind !== 'target-corner' || b.kind !== 'target-corner') return 0;
  const [p, q] = [targetCorner(a.marker, a.corner), targetCorner(b.marker, b.corner)];
  if (!p || !q) throw new Error('The card lacks a corner');
  return (Math.hypot(p.uMm - q.uMm, p.vMm - q.vMm) * checkMm) / CHECK_LINE_MM;
}

function fromFarthest(
  marks: readonly Mark[],
  kind: Mark['kind'],
  lengthMm: (a: Mark, b: Mark) => number,
): number {
  const ends = marks.filter((mark) => mark.kind === kind);
  let best = { px: 0, mm: Number.NaN };
  for (const [i, a] of ends.entries())
    for (const b of ends.slice(i + 1)) {
      const px = distancePx(a, b);
      if (px > best.px) best = { px, mm: lengthMm(a, b) };
    }
  return best.mm / best.px;
}

type Point = { readonly xPx: number; readonly yPx: number };

function meanOf(marks: readonly Mark[], kind: Mark['kind']): Point {
  const these = marks.filter((mark) => mark.kind === kind);
  const mean = (get: (mark: Mark) => number) => these.reduce((sum, m) => sum + get(m), 0) / these.length;
  return { xPx: mean((m) => m.xPx), yPx: mean((m) => m.yPx) };
}

function distancePx(a: Point, b: Point): number {
  return Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
}
