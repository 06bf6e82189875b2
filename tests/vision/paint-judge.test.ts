/** On painted scenes whose truth is known by rays (tests/bench/assists-paint*.ts); how often it is right is the study's, docs/assists.md. */
import { expect, test } from 'vitest';
import { SIGHTS } from '../../src/finding/over-stroke-mark.ts';
import { judgePaint, NO_HINTS, type PaintJudgement, type PaintSight } from '../../src/vision/paint-judge.ts';
import { paintBox, type RodLine } from '../../src/vision/paint-region.ts';
import { drawScene, type SceneDraw, type SceneKind, TUNING } from '../bench/assists-paint-draws.ts';
import { paintPicture } from '../bench/assists-paint-picture.ts';

/** A plain look: gray metal in soft light, a camera of middling quality, small so that it is painted fast. */
function scene(kind: SceneKind, seed: number, change: Partial<SceneDraw> = {}): SceneDraw {
  const drawn = drawScene(TUNING, kind, seed);
  return {
    ...drawn,
    company: kind.is === 'confuser' ? kind.what : null,
    rusted: 0.15,
    metal: 0.3,
    light: { ...drawn.light, tint: [1.1, 1, 0.9], sun: 0, lamp: 0.5, glow: 0 },
    stand: { ...drawn.stand, pxPerMm: 1.9, yawDeg: 18, liftDeg: 6 },
    camera: { ...drawn.camera, level: 0.15, blurPx: 0.7, smearPx: 0, noise: 0.008 },
    ...change,
  };
}

function judged(drawn: SceneDraw): { readonly judgement: PaintJudgement; readonly paintMm: number } {
  const { region, rod, paintMm } = paintPicture(drawn);
  return { judgement: judgePaint(region, rod), paintMm };
}

test('an orange band is seen, with where it ends', () => {
  const drawn = scene({ is: 'band' }, 3);
  const band = drawn.band as NonNullable<SceneDraw['band']>;
  const { judgement, paintMm } = judged({
    ...drawn,
    band: { ...band, outMm: 9, lengthMm: 20, worn: 0.15, faded: 0.1, dusty: 0.1, edgeMm: 0.3 },
  });
  expect(paintMm).toBeGreaterThan(5);
  expect(judgement.sight).toBe('seen');
  expect(judgement.confidence).toBeGreaterThan(0.9);
  const { reason } = judgement;
  if (reason.code !== 'paint/band') throw new Error(reason.code);
  expect(reason.colour).toBe('red or orange');
  expect(Math.abs(reason.toMm - 9)).toBeLessThan(2);
});

test.each([
  ['rusty rod', 41],
  ['orange hose across', 40],
] as const)('%s is not taken for a band', (what, seed) => {
  const { judgement, paintMm } = judged(scene({ is: 'confuser', what }, seed));
  expect(paintMm).toBe(0);
  expect(judgement.sight).not.toBe('seen');
});

test('where nobody can tell, it says so and why', () => {
  const rod = { facePx: [40, 60], way: [1, 0], pxPerMm: 3, halfWidthPx: 24 } as const;
  const box = paintBox(rod, { widthPx: 300, heightPx: 120 });
  const plain = (level: number) => ({
    ...box,
    rgba: new Uint8ClampedArray(4 * box.widthPx * box.heightPx).fill(level),
  });
  const reason = (level: number, at: RodLine = rod) => {
    const { sight, reason } = judgePaint(plain(level), at);
    expect(sight).toBe('cannot-tell');
    return reason.code;
  };
  expect(reason(3)).toBe('paint/too-dark');
  expect(reason(255)).toBe('paint/glare');
  expect(reason(120)).toBe('paint/rod-hidden');
  expect(reason(120, { ...rod, pxPerMm: 1, halfWidthPx: 8 })).toBe('paint/too-small');
  expect(reason(120, { ...rod, facePx: [299, 60] })).toBe('paint/outside-the-picture');
});

test('named white, which is too like bare metal, nothing is claimed', () => {
  const { region, rod } = paintPicture(scene({ is: 'bare' }, 12));
  const { sight, reason } = judgePaint(region, rod, { ...NO_HINTS, bandColour: 'white' });
  expect(sight).toBe('cannot-tell');
  expect(reason.code).toBe('paint/white');
});

test('of a picture in grays nothing is claimed, whatever it shows', () => {
  const { region, rod } = paintPicture(scene({ is: 'band' }, 3));
  const rgba = region.rgba.slice();
  for (let i = 0; i < rgba.length; i += 4) rgba.fill(region.rgba[i + 1] as number, i, i + 3);
  const { sight, reason } = judgePaint({ ...region, rgba }, rod);
  expect(sight).toBe('cannot-tell');
  expect(reason.code).toBe('paint/no-colour');
});

test('a band of another colour is seen where that was named, and is no red one', () => {
  const drawn = scene({ is: 'other colour', what: 'blue' }, 3);
  const band = drawn.band as NonNullable<SceneDraw['band']>;
  const { region, rod } = paintPicture({
    ...drawn,
    band: { ...band, outMm: 12, lengthMm: 20, worn: 0.1, faded: 0.1, dusty: 0.1, edgeMm: 0.3 },
  });
  expect(judgePaint(region, rod, { ...NO_HINTS, bandColour: 'blue' }).sight).toBe('seen');
  expect(judgePaint(region, rod, { ...NO_HINTS, bandColour: 'red or orange' }).sight).not.toBe('seen');
});

test('the sights are those of the record', () => {
  const sights: readonly PaintSight[] = SIGHTS;
  expect(sights).toEqual(['seen', 'not-seen', 'cannot-tell']);
});
