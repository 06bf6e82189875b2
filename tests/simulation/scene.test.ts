/** The simulated scenes against the engine's geometry, written twice: exact marks of usual parts must give the true stroke. */
import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import { simulate } from './scene.ts';
import type { SceneOptions } from './scene-options.ts';

const EXACT = {
  sigmaPx: 0.1,
  targetSigmaPx: 0.1,
  noisePx: 0,
  typical: true,
  distortion: false,
  rodMarks: true,
} as const;

const CASES: readonly (readonly [name: string, options: Omit<SceneOptions, 'seed' | 'sigmaPx'>])[] = [
  ['target on the pin, left in place', { reference: 'target', touchesPin: true, targetUnmoved: true }],
  ['target held anew and band, pictures of any turn', { reference: 'target+band', anyRoll: true }],
  [
    'tape on the pin, with fixed things',
    { reference: 'tape', touchesPin: true, tapeUnmoved: true, tiePoints: 6 },
  ],
  [
    'band with the pin measured and marks repeated',
    { reference: 'clamp-band', pinEndKnown: true, pinRepeats: 3, rimPoints: 20 },
  ],
  ['calibrated camera', { reference: 'target+band', profile: true }],
];

describe.each(CASES)('%s', (_name, options) => {
  test.each([1, 2, 3, 4])('seed %i', (seed) => {
    const { input, truth } = simulate({ ...EXACT, ...options, seed });
    const measured = measure(input);
    if (!measured.ok) throw new Error(measured.failure.code);
    expect(Math.abs(measured.value.strokeMm.value - truth.strokeMm)).toBeLessThan(0.15);
    expect(measured.value.fit.pValue).toBeGreaterThan(0.5);
  });
});

test('a fixed thing is marked in every picture and lies within it', () => {
  const { input } = simulate({
    seed: 9,
    reference: 'tape',
    sigmaPx: 1,
    noisePx: 0,
    tiePoints: 12,
    freeStrokeMm: 10,
  });
  for (const { marks } of input.views) {
    const ties = marks.flatMap((mark) => (mark.kind === 'tie-point' ? [mark] : []));
    expect(ties.map(({ tie }) => tie)).toEqual(Array.from({ length: 12 }, (_v, i) => String(i + 1)));
    for (const { xPx, yPx } of ties) expect(xPx > 0 && xPx < 1920 && yPx > 0 && yPx < 1080).toBe(true);
  }
});

test('what was added leaves the rest of a scene as it was', () => {
  const plain = simulate({ seed: 4, reference: 'tape', sigmaPx: 1, rodMarks: true });
  const more = simulate({
    seed: 4,
    reference: 'tape',
    sigmaPx: 1,
    rodMarks: true,
    tiePoints: 4,
    pinRepeats: 2,
    pinEndKnown: true,
  });
  expect(more.truth).toEqual(plain.truth);
  expect(more.poses).toEqual(plain.poses);
  const place = ({ kind, xPx, yPx }: { kind: string; xPx: number; yPx: number }) => `${kind} ${xPx} ${yPx}`;
  for (const [i, { marks }] of plain.input.views.entries()) {
    const places = new Set(more.input.views[i]?.marks.map(place));
    expect(marks.every((mark) => places.has(place(mark)))).toBe(true);
  }
});
