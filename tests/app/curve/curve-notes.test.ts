import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gapNotes, plateauNotes, pointNotes, textWidthGuessCss } from '../../../src/app/curve/curve-notes.ts';
import { curveScale } from '../../../src/app/curve/curve-scale.ts';
import { notSeenText } from '../../../src/app/words/curve.ts';
import { SIMULATED } from '../../browser/harness-curve/simulated-clip.ts';

const shown = (widthCss: number, limitMm: number | null = null) =>
  ({ widthCss, limitMm, unit: 'mm' }) as const;
const TEXT = '57.3 ± 0.7 mm';

test('a dimension reaches from the released level to the held one', () => {
  const measurement = SIMULATED.one();
  const scale = curveScale(measurement, shown(1000));
  const [note] = plateauNotes(measurement, scale, () => TEXT);
  const [low, high] = note?.lines.arrows.map(([tip]) => tip) ?? [];
  expect(low?.yCss).toBeCloseTo(scale.yAt(0), 0);
  expect((low?.yCss ?? 0) - (high?.yCss ?? 0)).toBeCloseTo(scale.yAt(0) - scale.yAt(44.4), 6);
  expect(note?.held.heightCss).toBeCloseTo(scale.yAt(0) - scale.yAt(2 * 0.8), 6);
});

test('the value stands upright where there is room, along the line where there is little, and nowhere without any', () => {
  const three = SIMULATED.three();
  const upright = (widthCss: number, text: string) =>
    plateauNotes(three, curveScale(three, shown(widthCss)), () => text).map((note) =>
      note.text === '' ? 'none' : note.upright,
    );
  expect(upright(1400, TEXT)).toEqual([true, true, true]);
  expect(upright(360, TEXT)).toEqual([false, false, false]);
  expect(upright(360, 'a value as long as no stroke ever is')).toEqual(['none', 'none', 'none']);
});

test('90 % is ticked on the drawn line at its time after the brake begins to move', () => {
  const measurement = SIMULATED.one();
  const scale = curveScale(measurement, shown(1000));
  const [note] = pointNotes(measurement, scale);
  expect(note?.kind).toBe('ninety');
  expect(note?.xCss).toBeCloseTo(scale.xAt(0.9 + (0.36 * Math.acos(-0.8)) / Math.PI), 6);
  // The line is drawn between frames a thirtieth of a second apart, where the rod goes 10 mm.
  expect(Math.abs((note?.yCss ?? 0) - scale.yAt(0.9 * 44.4))).toBeLessThan(scale.yAt(0) - scale.yAt(1));
});

test('words at one flank stand apart, in the order of their ticks, and off the limit’s line', () => {
  const three = SIMULATED.three();
  fc.assert(
    fc.property(
      fc.integer({ min: 360, max: 1600 }),
      fc.integer({ min: 30, max: 70 }),
      (widthCss, limitMm) => {
        const scale = curveScale(three, shown(widthCss, limitMm));
        const notes = pointNotes(three, scale).filter(({ wordCss }) => wordCss !== null);
        notes.forEach(({ xCss, wordCss }, i) => {
          expect(Math.abs((wordCss ?? 0) - (scale.limitCss ?? 0))).toBeGreaterThan(9);
          const above = notes.slice(0, i).findLast((note) => Math.abs(note.xCss - xCss) < 40);
          if (above) expect((wordCss ?? 0) - (above.wordCss ?? 0)).toBeGreaterThanOrEqual(17 - 1e-9);
        });
      },
    ),
  );
});

test('a gap reaches from the last frame seen to the next, and no two words of one kind stand on each other', () => {
  const measurement = {
    ...SIMULATED.one(),
    gaps: [20, 30, 34, 38, 90].map((from) => ({ kind: 'clevis-pin', from, to: from + 1 }) as const),
  };
  const scale = curveScale(measurement, shown(360));
  const notes = gapNotes(measurement, scale, notSeenText);
  expect(notes[0]?.fromCss).toBeCloseTo(scale.xAt(measurement.curve[19]?.timeS ?? 0), 9);
  expect(notes[0]?.toCss).toBeCloseTo(scale.xAt(measurement.curve[22]?.timeS ?? 0), 9);
  const words = notes.flatMap(({ wordCss }) => (wordCss === null ? [] : [wordCss]));
  expect(words.length).toBeGreaterThan(1);
  expect(words.length).toBeLessThan(notes.length);
  words.slice(1).forEach((x, i) => {
    expect(x - (words[i] ?? 0)).toBeGreaterThan(textWidthGuessCss('pin not seen', 14));
  });
});
