import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import { type ReferenceKind, type SceneOptions, simulate } from '../simulation/scene.ts';

const OUT_MM = 1.5;
const KINDS = ['clamp-band', 'target', 'tape', 'tape+band'] as const satisfies readonly ReferenceKind[];

/** A tape's zero is said to lie anywhere: said to lie at the face, it says where that is. */
function strokeMm(options: Pick<SceneOptions, 'seed' | 'reference' | 'faceMarkedMm'>): number {
  const { input } = simulate({
    sigmaPx: 0.25,
    noisePx: 0,
    typical: true,
    rodMarks: true,
    offSquareDeg: 20,
    ...options,
  });
  const { references } = input;
  const tape = references.tape && { ...references.tape, zeroAtFace: false };
  const result = measure({ ...input, references: { ...references, tape } });
  if (!result.ok) throw new Error(result.failure.code);
  return result.value.strokeMm.value;
}

test('an edge of the chamber beside its face does as well, if it is the same one in both pictures; in one of them it does not', () => {
  for (const reference of KINDS)
    for (const seed of [1, 2, 3]) {
      const byFace = strokeMm({ seed, reference });
      const inBoth = strokeMm({ seed, reference, faceMarkedMm: { released: OUT_MM, applied: OUT_MM } });
      const inOne = strokeMm({ seed, reference, faceMarkedMm: { applied: OUT_MM } });
      expect(Math.abs(inBoth - byFace)).toBeLessThan(0.02);
      expect(Math.abs(inOne - byFace)).toBeGreaterThan(0.4 * OUT_MM);
    }
});
