/**
 * Follows a made picture of no meaning, so that the browser has compiled what follows when the first frame of a clip is there.
 *
 * Model    blocks of chance levels, in them a blade with strokes, shifted by a few pixels from frame to frame
 */
import { drawFrom } from '../basics/random.ts';
import { MM_PER_INCH } from '../basics/units.ts';
import { startFollower } from './follow.ts';
import type { FollowQuestion } from './follow-sight.ts';
import type { FollowState } from './follow-state.ts';
import type { Gray } from './gray.ts';
import type { NamedGraduation } from './lattice-search.ts';
import type { Point } from './point.ts';

const WIDE_PX = 800;
const HIGH_PX = 240;
const BLOCK_PX = 8;
const BLADE = { topPx: 150, highPx: 50, fromPx: 100, inchPx: 80, inches: 6 };
/** Of a quarter of an inch. */
const STROKE = { highPx: 26, widePx: 4 };
const WAY: readonly Point[] = [
  [1, 0],
  [3, 1],
  [4, 3],
  [2, 2],
  [0, 1],
];
const TAPE_EVERY = 4;

/** One more frame each time it is asked. */
export function* warmUp(): Generator<void, never> {
  const pixels = chancePixels();
  const started = startFollower(shifted(pixels, [0, 0]), QUESTION, BEGUN);
  if (!started.ok) throw new Error(started.failure.code);
  for (let i = 0; ; i++) {
    started.value.next(shifted(pixels, WAY[i % WAY.length] as Point), i % TAPE_EVERY === 0);
    yield;
  }
}

const graduationAt = (inch: number): NamedGraduation => ({
  readingMm: inch * MM_PER_INCH,
  placePx: [BLADE.fromPx + inch * BLADE.inchPx, BLADE.topPx],
  sigmaPx: 1,
});

const FACE: Point = [100.5, 70.5];
const PIN: Point = [300.5, 70.5];
const CAMSHAFT: Point = [720.5, 70.5];

/** Places and sizes between whole pixels, as a hand's marks have them: else what is compiled holds for whole numbers only. */
const QUESTION: FollowQuestion = {
  things: [
    { name: 'pin', how: 'moves', placePx: PIN, radiusPx: 21.5 },
    { name: 'face', how: 'carried', placePx: FACE, radiusPx: 21.5 },
    { name: 'camshaft', how: 'turns', placePx: CAMSHAFT, radiusPx: 31.5 },
  ],
  tape: Array.from({ length: BLADE.inches + 1 }, (_, inch) => graduationAt(inch)),
  aboutPx: FACE,
  leaveOut: [],
  reachPx: { out: [200.5, 0.5], back: [-40.5, 0.5] },
};

const STILL_PLACES = Array.from({ length: 24 }, (_, i): Point => [60 + 56 * (i % 12), i < 12 ? 40 : 110]);
/** As if it had begun already, so that nothing is searched for what stands still. */
const BEGUN: FollowState = {
  seedPlaces: STILL_PLACES,
  stills: STILL_PLACES.map((place) => ({ place, lostFor: 0 })),
  things: [PIN, FACE, CAMSHAFT].map((place) => ({
    place,
    steps: [1, 0, 0, 1],
    seen: true,
    stepPx: [0.01, 0.01],
    turnRad: 0.001,
  })),
  shiftPx: [0, 0],
};

function chancePixels(): Uint8Array {
  const draw = drawFrom(1);
  const pixels = new Uint8Array(WIDE_PX * HIGH_PX);
  const levels = Array.from({ length: WIDE_PX / BLOCK_PX }, () => 0);
  for (let y = 0; y < HIGH_PX; y++) {
    if (y % BLOCK_PX === 0) for (const i of levels.keys()) levels[i] = draw.uniform(20, 140);
    for (let x = 0; x < WIDE_PX; x++)
      pixels[y * WIDE_PX + x] =
        bladeLevel(x, y - BLADE.topPx) ?? (levels[Math.floor(x / BLOCK_PX)] as number);
  }
  return pixels;
}

/** null beside the blade. down: from its edge. */
function bladeLevel(x: number, down: number): number | null {
  if (down < 0 || down >= BLADE.highPx) return null;
  const offPx = (x - BLADE.fromPx + STROKE.widePx / 2) % (BLADE.inchPx / 4);
  return down < STROKE.highPx && offPx >= 0 && offPx < STROKE.widePx ? 40 : 210;
}

/** A view of the same bytes: what leaves at the left comes in at the right, a row higher. */
function shifted(pixels: Uint8Array, [x, y]: Point): Gray {
  return { widthPx: WIDE_PX, heightPx: HIGH_PX - 4, values: pixels.subarray(x + y * WIDE_PX) };
}
