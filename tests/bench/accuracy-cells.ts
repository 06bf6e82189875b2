/** What the study varies: references, mark noise, camera, way of working; and the options of a scene of each cell. */
import type { ReferenceKind, SceneOptions } from '../simulation/scene-options.ts';

export const REFERENCES: readonly ReferenceKind[] = [
  'target+band',
  'tape+band',
  'target',
  'clamp-band',
  'tape',
  'tape+arm',
  'arm-length',
  'distance',
];

/** plain: the fewest marks, things held anew for each picture. careful: what the tool advises. calibrated: careful, with a camera
 * profile. */
export type Way = 'plain' | 'careful' | 'calibrated';

export type SigmaPx = 1 | 0.25;

export type Cell = {
  readonly reference: ReferenceKind;
  readonly way: Way;
  readonly sigmaPx: SigmaPx;
  readonly cameraStill: boolean;
};

export function nameOf({ reference, way, sigmaPx, cameraStill }: Cell): string {
  return `${reference}, ${way}, ${sigmaPx} px, ${cameraStill ? 'stands still' : 'hand-held'}`;
}

export function allCells(): readonly Cell[] {
  return REFERENCES.flatMap((reference) =>
    ([1, 0.25] as const).flatMap((sigmaPx) =>
      waysOf(reference).flatMap((way) =>
        [false, true].map((cameraStill) => ({ reference, way, sigmaPx, cameraStill })),
      ),
    ),
  );
}

/** What an arm length or a distance alone lacks, no care makes good: the direction of view. */
function waysOf(reference: ReferenceKind): readonly Way[] {
  const isLast = reference === 'arm-length' || reference === 'distance';
  return isLast ? ['plain'] : ['plain', 'careful', 'calibrated'];
}

export function sceneOptions(cell: Cell, seed: number, strokeMm?: number): SceneOptions {
  const { reference, way, sigmaPx, cameraStill } = cell;
  const plain: SceneOptions = {
    seed,
    reference,
    sigmaPx,
    cameraStill,
    rodMarks: true,
    offSquareDeg: 25,
    distanceMm: [508, 1016],
    ...(strokeMm === undefined ? {} : { strokeMm }),
  };
  if (way === 'plain') return plain;
  const alongRod = reference.includes('tape') || reference.includes('target');
  const hasBand = reference.includes('band');
  const hand = sigmaPx === 1;
  return {
    ...plain,
    // A rim of unknown diameter still shows the direction of view.
    reference: hasBand ? reference : (`${reference}+band` as ReferenceKind),
    uBandMm: hasBand ? 0.3 : 30,
    // Found in both pictures by the tool itself.
    tiePoints: 16,
    tieSigmaPx: 0.4,
    // An assist that finds marks to 0.25 px gains nothing from being asked three times, but finds more of them.
    pinRepeats: hand ? 3 : 1,
    rimPoints: hand ? 20 : 40,
    graduationStepMm: hand ? 25.4 : 6.35,
    touchesPin: true,
    tapeUnmoved: true,
    targetUnmoved: true,
    pinEndKnown: !alongRod,
    profile: way === 'calibrated',
  };
}
