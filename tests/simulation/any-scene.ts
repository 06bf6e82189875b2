/**
 * Any sensible scene of a reference kind, drawn from a seed: what a person may hold up a phone to. Camera 16 to 60 in away, up to
 * 45 degrees off square in each of two directions, the rod pointing any way in the picture, picture upright or lying, focal
 * length 0.6 to 3 times its longer side and told by EXIF or not, every clamp-type chamber from 9 to 36, arms of 5 to 7 in, both
 * hands. What falls outside the picture is not marked; where too little is left, the person stands elsewhere (drawn again).
 */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { mmFromInches } from '../../src/basics/units.ts';
import type { View } from '../../src/marks/view.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type ReferenceKind, type Scene, type SceneOptions, simulate } from './scene.ts';

export const REFERENCE_KINDS: readonly ReferenceKind[] = [
  'tape',
  'clamp-band',
  'arm-length',
  'distance',
  'tape+arm',
  'tape+band',
  'tape+distance',
  'band+arm',
  'distance+arm',
  'distance+band',
  'target',
  'tape+target',
  'target+band',
  'target+arm',
];

/** Clamp-type chambers 9, 12, 16, 20, 24, 30, 36. Source: 49 CFR 393.47(e)(1), outside diameters. */
const BANDS_IN = [5.25, 5.6875, 6.375, 6.78125, 7.21875, 8.09375, 9];
/** Common practice, no source. */
const ARMS_IN = [5, 5.5, 6, 6.5, 7];
const PICTURES_PX = [
  [1920, 1080],
  [1080, 1920],
  [4032, 3024],
  [3024, 4032],
] as const;
const SIGMAS_PX = [0.5, 1, 2];
const MOST_TRIES = 200;

export type AnyScene = Scene & { readonly options: SceneOptions };

export type Fixed = Partial<Pick<SceneOptions, 'strokeMm' | 'cameraStill' | 'focalKnown'>>;

export function anyScene(reference: ReferenceKind, seed: number, fixed: Fixed = {}): AnyScene {
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const options = { ...drawOptions(drawFrom(seed + 7919 * attempt), reference), ...fixed };
    const scene = simulate(options);
    const [widthPx, heightPx] = [options.widthPx as number, options.heightPx as number];
    const views = scene.input.views.map((view) => inPicture(view, widthPx, heightPx));
    const input = { ...scene.input, views };
    if (views.every((view) => isWhole(view, options)) && problemFromViews(input).ok)
      return { ...scene, input, options };
  }
  throw new Error(`No sensible scene in ${MOST_TRIES} tries: ${reference}, seed ${seed}`);
}

function drawOptions(draw: Draw, reference: ReferenceKind): SceneOptions {
  const one = <T>(of: readonly T[]): T => of[Math.floor(draw.uniform(0, of.length))] as T;
  const chance = (share: number): boolean => draw.uniform(0, 1) < share;
  const [widthPx, heightPx] = one(PICTURES_PX);
  const focal = 0.6 * Math.exp(draw.uniform(0, Math.log(5)));
  const strokeMm = draw.uniform(15, 75);
  return {
    seed: Math.floor(draw.uniform(1, 2 ** 30)),
    reference,
    sigmaPx: one(SIGMAS_PX),
    offSquareDeg: 45,
    distanceMm: [mmFromInches(16), mmFromInches(60)],
    cameraStill: chance(0.5),
    camshaft: reference.includes('arm') || chance(0.9),
    rodMarks: chance(0.7),
    strokeMm,
    focalKnown: chance(0.5),
    widthPx,
    heightPx,
    focalOverWidth: [focal, focal],
    anyRoll: true,
    tapeUnmoved: chance(0.3),
    targetUnmoved: chance(0.3),
    touchesPin: chance(0.3),
    tiePoints: one([0, 0, 0, 3]),
    profile: chance(0.1),
    armMm: mmFromInches(one(ARMS_IN)),
    bandMm: mmFromInches(one(BANDS_IN)),
    ...(chance(0.1) ? { freeStrokeMm: strokeMm * draw.uniform(0.1, 0.4) } : {}),
  };
}

function inPicture(view: View, widthPx: number, heightPx: number): View {
  const isIn = ({ xPx, yPx }: View['marks'][number]) => xPx > 0 && xPx < widthPx && yPx > 0 && yPx < heightPx;
  return { ...view, marks: view.marks.filter(isIn) };
}

/** Each view shows face, pin, camshaft end if it is to be marked, and enough of every reference. */
function isWhole({ marks }: View, { reference, camshaft }: SceneOptions): boolean {
  const count = (kind: string) => marks.filter((mark) => mark.kind === kind).length;
  return (
    count('chamber-face') === 1 &&
    count('clevis-pin') === 1 &&
    (!camshaft || count('camshaft-end') === 1) &&
    (!reference.includes('tape') || count('tape-graduation') >= 3) &&
    (!reference.includes('band') || count('clamp-band') >= 6) &&
    (!reference.includes('distance') || count('distance-end') === 2) &&
    (!reference.includes('target') || count('target-corner') >= 8)
  );
}
