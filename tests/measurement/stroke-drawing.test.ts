import { expect, test } from 'vitest';
import { clipViews } from '../../src/measurement/clip-views.ts';
import type { PicturePoint } from '../../src/measurement/measurement.ts';
import { strokeOverTime } from '../../src/measurement/stroke-over-time.ts';
import { anyClip } from '../simulation/any-clip.ts';
import { simulateClip } from '../simulation/clip-scene.ts';

/** To the side of the chamber axis, mm: where the dimension line is drawn. */
const ASIDE = -62;

const apart = (a: PicturePoint, b: PicturePoint) => Math.hypot(a[0] - b[0], a[1] - b[1]);

test.each([9, 11, 12])(
  'in every frame of a clip that sways by a hand’s width the stroke is drawn where it is, %i',
  (seed) => {
    const { input, track, truth } = simulateClip(
      anyClip(seed, {
        reference: 'tape',
        tapeUnmoved: true,
        handSigmaPx: 0.3,
        framesPerS: 30,
        rimSigmaPx: 0.5,
        hand: { moveMm: 30, turnRad: 0.01, lastingS: 1.2 },
      }),
    );
    const views = clipViews(input, track);
    if (!views.ok) throw new Error(views.failure.code);
    const clip = strokeOverTime({ ...input, ...views.value }, track);
    if (!clip.ok) throw new Error(clip.failure.code);
    const { curve, drawings } = clip.value;
    const pin = drawings.map((_, frame) => truth.pinMm[frame] ?? [Number.NaN, 0, 0]);
    const releasedMm = Math.min(...pin.map(([xMm]) => xMm));
    const off = drawings.map((drawing, frame) => {
      if (!drawing) return null;
      const [xMm, , zMm] = pin[frame] as (typeof pin)[number];
      const at = (x: number) => truth.seen(frame, [x, ASIDE, zMm]);
      return {
        start: apart(drawing.dimension[0], at(releasedMm)),
        end: apart(drawing.dimension[1], at(xMm)),
      };
    });
    expect(off.map((each) => each === null)).toEqual(curve.map(({ stroke }) => stroke === null));
    // What the marks tell of direction and depth is off alike in all frames; seen from elsewhere it shows more, or less.
    const marked = off[truth.seedFrame];
    if (!marked) throw new Error('the marked frame has no drawing');
    expect(Math.max(marked.start, marked.end)).toBeLessThan(5);
    for (const [frame, each] of off.entries()) {
      if (!each) continue;
      expect(each.start, `start, frame ${frame}`).toBeLessThan(2 * marked.start + 1);
      expect(each.end, `end, frame ${frame}`).toBeLessThan(2 * marked.end + 1);
    }
  },
);
