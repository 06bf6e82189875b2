/** The wrench of a followed clip, by the truth of the rendered one: no picture is looked at. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Track, TrackPoint } from '../../src/marks/track.ts';
import { adjusterTurn } from '../../src/measurement/adjuster-turn.ts';
import { type WrenchSight, wrenchOfClip } from '../../src/measurement/wrench-clip.ts';

type Px = readonly [number, number];
type TruthFrame = Readonly<Record<'centre' | 'tip' | 'pin' | 'camshaft', Px>> & { readonly turnDeg: number };
const truth: {
  readonly frames: readonly TruthFrame[];
  readonly stepsDeg: readonly number[];
  readonly focalPx: number;
} = JSON.parse(readFileSync('tests/fixtures/wrench/truth.json', 'utf8'));
const SEED = 4;
const STILLS: readonly Px[] = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [100 * i + 50, 37 * ((i * i) % 11) + 40]);

const column = (kind: TrackPoint['kind'], markId: string, places: readonly (Px | null)[]): TrackPoint => ({
  kind,
  markId,
  xCentiPx: places.map((place) => place && Math.round(100 * place[0])),
  yCentiPx: places.map((place) => place && Math.round(100 * place[1])),
  sigmaMilliPx: places.map((place) => place && 100),
});

function trackOf(pin: readonly (Px | null)[], seed = SEED): Track {
  return {
    id: 'wrench',
    captureId: 'c',
    state: 'released',
    seed: { index: seed, timeTicks: seed },
    corrections: [],
    firstIndex: 0,
    timeTicks: pin.map((_place, i) => i),
    points: [
      column('clevis-pin', 'pin', pin),
      ...STILLS.map((still, i) =>
        column(
          'still',
          `s${i}`,
          pin.map(() => still),
        ),
      ),
    ],
  };
}

const mark = ([xPx, yPx]: Px) => ({ xPx, yPx, sigmaPx: 0.3 });
const SIGHTS = truth.frames.map(
  ({ centre, tip, pin, camshaft }): WrenchSight => ({
    centre: mark(centre),
    tip: mark(tip),
    arm: { pin: mark(pin), camshaft: mark(camshaft) },
  }),
);
const PINS = truth.frames.map(({ pin }) => pin);

test('five applications by the pin alone, a picture of each of six rests, and the turn of them', () => {
  const clip = wrenchOfClip(trackOf(PINS), SIGHTS, 15);
  if (!clip.ok) throw new Error(clip.failure.code);
  const { rests, applications, beforeSeed } = clip.value;
  expect([applications, beforeSeed]).toEqual([5, 0]);
  expect(rests.map((rest) => rest.applicationsBefore)).toEqual([0, 1, 2, 3, 4, 5]);
  const at = { focalPx: truth.focalPx, uLnFocal: 0.035, middlePx: [480, 270] as const };
  const turn = adjusterTurn(
    rests.map((rest) => ({ ...rest, ...at })),
    true,
  );
  if (!turn.ok) throw new Error(turn.failure.code);
  expect(turn.value.cameraStood).toBe(true);
  const sought = -truth.stepsDeg.reduce((sum, step) => sum + step, 0);
  const { value, u } = turn.value.totalRad;
  expect(Math.abs((value * 180) / Math.PI - sought)).toBeLessThan((1.96 * u * 180) / Math.PI);
});

test('a pin that stands, one that is not seen, and a wrench that is not: each is told', () => {
  const still = wrenchOfClip(trackOf(PINS.map(() => PINS[SEED] as Px)), SIGHTS, 15);
  expect(still.ok || still.failure.code).toBe('clip/no-application');
  const lost = wrenchOfClip(trackOf(PINS.map((pin, i) => (i < 20 ? pin : null))), SIGHTS, 15);
  expect(lost.ok || lost.failure.code).toBe('clip/pin-lost');
  const applied = wrenchOfClip(trackOf(PINS, 20), SIGHTS, 15);
  expect(applied.ok || applied.failure.code).toBe('clip/seed-elsewhere');
  const gone = wrenchOfClip(
    trackOf(PINS),
    SIGHTS.map((sight, i) => (i < 8 ? sight : null)),
    15,
  );
  expect(gone).toEqual({ ok: false, failure: { code: 'wrench-clip/few-rests', rests: 1, applications: 5 } });
});
