/**
 * A rendered picture as a careful hand would have marked it: the true image points with seeded scatter, as large as the app says
 * of a mouse without a loupe, 1.2 screen pixels to the picture's pixel. Only what the picture shows is marked.
 */
import type { Draw } from '../../src/basics/random.ts';
import { mmFromInches } from '../../src/basics/units.ts';
import type { Mark } from '../../src/marks/mark.ts';
import { placementSigmaPx } from '../../src/marks/placement.ts';
import type { References } from '../../src/references/reference.ts';
import type { What } from '../simulation/marker.ts';
import type { DemoView } from './demo-truth.ts';

const SIGMA_PX = placementSigmaPx({ hand: 'mouse', screenPxPerFramePx: 1.2, gearing: 1, magnification: 1 });

/** As the tool advises: what the stroke is read from is set more than once. */
const SET_TIMES = 3;

/** The first inch is often hidden by the hook; what lies far behind the clevis says nothing of the rod. */
const FROM_INCHES = 1;
const TO_INCHES = 8;

export function demoMarks(
  { state, points }: DemoView,
  references: References,
  draw: Draw,
  prefix: string,
): readonly Mark[] {
  const marks: Mark[] = [];
  const put = ({ px: [u, v] }: { readonly px: readonly [number, number] }, what: What) => {
    const [xPx, yPx] = [u, v].map((at) => hundredths(at + draw.normal(0, SIGMA_PX))) as [number, number];
    const id = `${prefix}-${state}-${marks.length + 1}`;
    marks.push({ ...what, id, xPx, yPx, sigmaPx: hundredths(SIGMA_PX), placedBy: 'hand' });
  };
  for (let again = 0; again < SET_TIMES; again++) {
    put(points.chamberFace, { kind: 'chamber-face' });
    put(points.clevisPin, { kind: 'clevis-pin' });
  }
  put(points.camshaftEnd, { kind: 'camshaft-end' });
  for (const at of points.rodLine) put(at, { kind: 'rod-line' });
  if (references.tape)
    for (const { inches, px } of points.tapeGraduations ?? [])
      if (Number.isInteger(inches) && inches >= FROM_INCHES && inches <= TO_INCHES)
        put({ px }, { kind: 'tape-graduation', readingMm: mmFromInches(inches) });
  if (references.clampBand)
    for (const at of points.clampBand) if (at.visible) put(at, { kind: 'clamp-band' });
  return marks;
}

function hundredths(px: number): number {
  return Math.round(100 * px) / 100;
}
