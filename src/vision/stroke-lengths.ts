/**
 * How far each of a lattice's strokes runs over the blade: what tells whole inches from halves and quarters where no reading is known.
 *
 * Model    row by row from the edge, how much darker the stroke is than what lies to one side of it, the lighter of both; the stroke ends
 *          where that stays below half of what it was near the edge
 * Fails    null where it is not seen near the edge
 */
import type { MeasuredLattice } from './assist-lattice.ts';
import { levelIn } from './assist-tape-edge.ts';
import { median } from './biweight.ts';
import type { Gray } from './gray.ts';
import { placeOf } from './projective-scale.ts';

const MOST_MM = 18;
const FIRST_MM = 1;
const STEP_MM = 0.5;
/** What a stroke is compared with lies so far beside it. */
const BESIDE_MM = 1.5;
/** The stroke may lie so far from where it should. */
const SLACKS_MM = [0, -0.17, 0.17, -0.35, 0.35];
/** Of how far off it is seen in one row, in the next one. */
const FOLLOWED = 0.5;
const ENDED_MM = 1;
/** No stroke of a quarter inch is shorter: something lies over it. */
const LEAST_MM = 1.5;

/** Of the stroke of a reading, mm from the edge, to half a millimetre. */
export function strokeLengthMm(gray: Gray, lattice: MeasuredLattice, readingMm: number): number | null {
  const { frame, scale, rough, middlePx, measuring } = lattice;
  const { pxPerMm } = measuring;
  // From row to row the stroke is followed: its slant is known roughly.
  let driftMm = 0;
  const darkAt = (mm: number) => {
    const t = mm * pxPerMm;
    const s = placeOf(scale, readingMm) + rough.shear * (t - middlePx);
    const level = (offMm: number) => levelIn(gray, frame, s + (driftMm + offMm) * pxPerMm, t);
    const [at, here] = SLACKS_MM.map((offMm) => [offMm, level(offMm)] as const).reduce((a, b) =>
      b[1] < a[1] ? b : a,
    );
    const dark = Math.max(level(-BESIDE_MM), level(BESIDE_MM)) - here;
    driftMm += FOLLOWED * at;
    return dark;
  };
  const near = median([2.5, 2, 1.5, 1].map(darkAt));
  let ended = 0;
  let mm = FIRST_MM;
  for (; mm <= MOST_MM && ended < ENDED_MM; mm += STEP_MM)
    ended = darkAt(mm) < 0.5 * near ? ended + STEP_MM : 0;
  const lengthMm = mm - STEP_MM - ended;
  return lengthMm < LEAST_MM ? null : lengthMm;
}
