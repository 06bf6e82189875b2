/** Any sensible clip of a brake that is applied, drawn from a seed. */
import { drawFrom } from '../../src/basics/random.ts';
import type { ClipOptions } from './clip-scene.ts';

export type FixedOfClip = Partial<
  Pick<
    ClipOptions,
    | 'reference'
    | 'handSigmaPx'
    | 'lightPx'
    | 'tapeUnmoved'
    | 'framesPerS'
    | 'distanceMm'
    | 'offSquareDeg'
    | 'hand'
    | 'camshaft'
    | 'rimSigmaPx'
  >
>;

export function anyClip(seed: number, fixed: FixedOfClip = {}): ClipOptions {
  const draw = drawFrom(seed);
  const one = <T>(of: readonly T[]): T => of[Math.floor(draw.uniform(0, of.length))] as T;
  const chance = (share: number) => draw.uniform(0, 1) < share;
  const strokeMm = draw.uniform(20, 70);
  const strokesMm = Array.from({ length: one([1, 1, 2, 3]) }, () => strokeMm + draw.normal(0, 0.5));
  const heldS = draw.uniform(0.8, 3);
  const restS = draw.uniform(0.8, 2.5);
  const begins = chance(0.2) ? ('applied' as const) : ('released' as const);
  const applyS = draw.uniform(0.15, 0.8);
  // A hand before the pin, once, in the middle of the first spell of held brake.
  const heldFrom = begins === 'applied' ? 0 : restS + 3 * applyS;
  const hiddenFrom = heldFrom + 0.35 * heldS;
  const tripod = chance(0.15);
  return {
    seed: Math.floor(draw.uniform(1, 2 ** 30)),
    reference: chance(0.7) ? 'tape' : 'clamp-band',
    handSigmaPx: one([0.3, 1]),
    noisePx: draw.uniform(0.1, 0.4),
    alike: draw.uniform(0, 0.7),
    lightPx: 0,
    framesPerS: one([24, 30, 30, 60, 60, 240]),
    uneven: chance(0.25),
    course: {
      strokesMm,
      restS,
      heldS,
      applyS,
      releaseS: draw.uniform(0.2, 0.8),
      creepMmPerS: chance(0.5) ? 0 : draw.uniform(0, 0.6),
      begins,
      ends: begins === 'released' && chance(0.2) ? 'applied' : 'released',
    },
    hand: {
      moveMm: tripod ? 0 : draw.uniform(2, 10),
      turnRad: tripod ? 0 : draw.uniform(0.002, 0.012),
      lastingS: draw.uniform(0.5, 2),
    },
    seedState: chance(0.75) ? 'released' : 'applied',
    tapeUnmoved: chance(0.7),
    distanceMm: [600, 900],
    offSquareDeg: 22,
    hidden: chance(0.3) ? [[hiddenFrom, hiddenFrom + Math.min(0.4, 0.3 * heldS)]] : [],
    lost: one([0, 0.01, 0.05]),
    stills: 36,
    camshaft: chance(0.8),
    rimSigmaPx: null,
    ...fixed,
  };
}
