/** What the study varies: references, mark noise, camera, way of working; and the options of a scene of each cell. */
import type { ReferenceKind, SceneOptions } from '../simulation/scene-options.ts';

export const REFERENCES: readonly ReferenceKind[] = [
  'target+band',
  'tape+band',
  'target',
  'clamp-band',
  'tape',
  'target+arm',
  'tape+arm',
  'band+arm',
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
    ([1, 0.25] as const).flatMap((sigmaPx) => [
      ...(['plain', 'careful'] as const).flatMap((way) =>
        [false, true].map((cameraStill) => ({ reference, way, sigmaPx, cameraStill })),
      ),
      { reference, way: 'calibrated' as const, sigmaPx, cameraStill: false },
    ]),
  );
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
  const nothingTouches = !reference.includes('tape') && !reference.includes('target');
  return {
    ...plain,
    tiePoints: 6,
    // An assist that finds a mark to 0.25 px gains nothing from being asked three times.
    pinRepeats: sigmaPx === 1 ? 3 : 1,
    touchesPin: true,
    tapeUnmoved: true,
    targetUnmoved: true,
    rimPoints: 20,
    uBandMm: 0.3,
    pinEndKnown: nothingTouches && reference.includes('band'),
    profile: way === 'calibrated',
  };
}
