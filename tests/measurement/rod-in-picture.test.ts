import { expect, test } from 'vitest';
import type { Mark } from '../../src/marks/mark.ts';
import { measure } from '../../src/measurement/measure.ts';
import { rodInPicture } from '../../src/measurement/rod-in-picture.ts';
import { simulate } from '../simulation/scene.ts';

const mark = (kind: 'chamber-face' | 'clevis-pin' | 'rod-line', xPx: number, yPx: number): Mark => ({
  kind,
  id: `${kind} ${xPx}`,
  xPx,
  yPx,
  sigmaPx: 1,
  placedBy: 'hand',
});

test('from marks alone: way to the farthest mark on the rod, scale from face to pin or from the tape', () => {
  const face = mark('chamber-face', 100, 200);
  const pin = mark('clevis-pin', 100, 536);
  const bare = rodInPicture({ state: 'applied', marks: [face, pin] }, null);
  expect(bare).toMatchObject({ ok: true, value: { facePx: [100, 200], way: [0, 1], pxPerMm: 2 } });
  const tape = [25.4, 127].map(
    (readingMm, i): Mark => ({
      kind: 'tape-graduation',
      readingMm,
      id: `t${i}`,
      xPx: 130,
      yPx: 260 + 3 * readingMm,
      sigmaPx: 1,
      placedBy: 'hand',
    }),
  );
  const more = rodInPicture(
    { state: 'applied', marks: [face, pin, mark('rod-line', 160, 280), ...tape] },
    null,
  );
  if (!more.ok) throw new Error(more.failure.code);
  expect(more.value.way[0]).toBeCloseTo(0.6, 12);
  expect(more.value.pxPerMm).toBeCloseTo(3, 12);
  expect(more.value.halfWidthPx).toBeCloseTo((3 * 15.875) / 2, 12);
});

test('without the face or the pin it says which is missing', () => {
  const missing = (marks: readonly Mark[]) => rodInPicture({ state: 'released', marks }, null);
  expect(missing([mark('clevis-pin', 1, 1)])).toMatchObject({ failure: { kind: 'chamber-face' } });
  expect(missing([mark('chamber-face', 1, 1)])).toMatchObject({ failure: { kind: 'clevis-pin' } });
});

test('an adjustment gives way and scale near the face as the simulated camera has them', () => {
  const scene = simulate({
    reference: 'tape+band',
    seed: 3,
    cameraStill: true,
    hand: 1,
    widthPx: 1920,
    heightPx: 1080,
    sigmaPx: 1,
    noisePx: 0,
    typical: true,
    distortion: false,
    anyRoll: true,
    rodMarks: true,
    offSquareDeg: 20,
    distanceMm: [500, 600],
  });
  const measured = measure(scene.input);
  if (!measured.ok) throw new Error(measured.failure.code);
  for (const rod of measured.value.rods) {
    const marks = scene.input.views.find(({ state }) => state === rod.state)?.marks ?? [];
    const onRod = marks.filter(({ kind }) => kind === 'rod-line').map(({ xPx, yPx }) => [xPx, yPx] as const);
    const [near, far] = [onRod[0], onRod.at(-1)];
    if (!near || !far) throw new Error('no marks on the rod');
    const [dx, dy] = [far[0] - near[0], far[1] - near[1]];
    const along = (dx * rod.way[0] + dy * rod.way[1]) / Math.hypot(dx, dy);
    // Whichever end is nearer to the face, both run along the rod.
    expect(Math.abs(along)).toBeGreaterThan(0.999);
    const pin = marks.find(({ kind }) => kind === 'clevis-pin');
    const face = marks.find(({ kind }) => kind === 'chamber-face');
    if (!pin || !face) throw new Error('no mechanism');
    const outwards = (pin.xPx - face.xPx) * rod.way[0] + (pin.yPx - face.yPx) * rod.way[1];
    expect(outwards).toBeGreaterThan(0);
    // Pins are 90 to 200 mm from the face, a rod 15.9 mm thick: seen nearly from the side.
    expect(outwards / rod.pxPerMm).toBeGreaterThan(90);
    expect(outwards / rod.pxPerMm).toBeLessThan(200);
    expect(rod.halfWidthPx / rod.pxPerMm).toBeGreaterThan(7.9);
    expect(rod.halfWidthPx / rod.pxPerMm).toBeLessThan(9.2);
  }
});
