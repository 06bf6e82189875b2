/** What the engine is timed on: two hand-held pictures with every reference, then more marks, then a third picture. */
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { REFERENCE_KINDS } from '../simulation/any-scene.ts';
import { type ReferenceKind, type SceneOptions, simulate } from '../simulation/scene.ts';

export type EngineCase = {
  readonly reference: ReferenceKind;
  readonly views: 2 | 3;
  readonly inputs: readonly MeasureInput[];
  /** Of all pictures together, in the scene in the middle. */
  readonly marks: number;
};

/** Away from the seeds that other tests and studies use. */
const FIRST_SEED = 4_000_037;
/** Face, pin, camshaft end and two points of the rod. */
const OTHER_MARKS = 5;
/** Reach of a usual tape from the face: pin and a little more. */
const TAPE_MM = 215;

export const MARKS_PER_VIEW = [10, 20, 30, 50, 70, 100] as const;

export function casesByReference(scenes: number): readonly EngineCase[] {
  return REFERENCE_KINDS.map((reference) => caseOf(reference, 2, scenes, {}));
}

export function casesByMarks(reference: 'clamp-band' | 'tape', scenes: number): readonly EngineCase[] {
  return ([2, 3] as const).flatMap((views) =>
    MARKS_PER_VIEW.map((perView) => {
      const count = perView - OTHER_MARKS;
      const more = reference === 'tape' ? { graduationStepMm: TAPE_MM / count } : { rimPoints: count };
      return caseOf(reference, views, scenes, more);
    }),
  );
}

function caseOf(
  reference: ReferenceKind,
  views: 2 | 3,
  scenes: number,
  more: Partial<SceneOptions>,
): EngineCase {
  const inputs = Array.from({ length: scenes }, (_, i) => {
    const options: SceneOptions = {
      seed: FIRST_SEED + i,
      reference,
      sigmaPx: 1,
      rodMarks: true,
      distanceMm: [508, 1016],
      ...(views === 3 ? { freeStrokeMm: 12 } : {}),
      ...more,
    };
    return simulate(options).input;
  });
  const counts = inputs.map((input) => input.views.reduce((sum, view) => sum + view.marks.length, 0));
  return { reference, views, inputs, marks: counts.sort((a, b) => a - b)[scenes >> 1] ?? 0 };
}
