import fc from 'fast-check';
import { expect, test } from 'vitest';
import { curveScale } from '../../../src/app/curve/curve-scale.ts';
import { gapNotes, gapsIn } from '../../../src/app/curve/gap-notes.ts';
import { textWidthGuessCss } from '../../../src/app/curve/phase-place.ts';
import { plateauNotes } from '../../../src/app/curve/plateau-notes.ts';
import { pointNotes } from '../../../src/app/curve/point-notes.ts';
import { openText } from '../../../src/app/words/curve.ts';
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

test('where the clip begins with the brake applied, the released level comes from after it', () => {
  const measurement = SIMULATED.begun();
  const scale = curveScale(measurement, shown(1000));
  const [note] = plateauNotes(measurement, scale, () => TEXT);
  const releasing = measurement.applications[0]?.phases.find(({ kind }) => kind === 'releasing');
  expect(note?.extension.fromCss).toBeCloseTo(
    scale.xAt(measurement.curve[releasing?.to ?? 0]?.timeS ?? 0),
    6,
  );
  expect(note?.extension.toCss).toBeLessThan(note?.xCss ?? 0);
  expect(pointNotes(measurement, scale).filter(({ kind }) => kind === 'ninety')).toEqual([]);
});

test('90 % is ticked where the drawn line passes it', () => {
  const measurement = SIMULATED.one();
  const scale = curveScale(measurement, shown(1000));
  const [note] = pointNotes(measurement, scale);
  expect(note?.kind).toBe('ninety');
  expect(note?.yCss).toBeCloseTo(scale.yAt(0.9 * 44.4), 0);
  // Between frames a thirtieth of a second apart a straight line stands for a bent one.
  const trueX = scale.xAt(0.9 + (0.36 * Math.acos(-0.8)) / Math.PI);
  expect(Math.abs((note?.xCss ?? 0) - trueX)).toBeLessThan(scale.xAt(0.01) - scale.xAt(0));
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
          const offCss = (wordCss ?? 0) - (scale.limitCss ?? 0);
          expect(Math.abs(offCss)).toBeGreaterThan(9);
          if (xCss < 150) expect(offCss > 0 || offCss < -30).toBe(true);
          const above = notes.slice(0, i).findLast((note) => Math.abs(note.xCss - xCss) < 40);
          if (above) expect((wordCss ?? 0) - (above.wordCss ?? 0)).toBeGreaterThanOrEqual(17 - 1e-9);
        });
      },
    ),
  );
});

test('a gap reaches from the last frame seen to the next, and no two words stand on each other', () => {
  const measurement = openAt([20, 30, 34, 38, 90], 2);
  const scale = curveScale(measurement, shown(390));
  const notes = gapNotes(measurement, gapsIn(measurement, 'stroke'), scale, openText);
  expect(notes.map(({ narrow }) => narrow)).toEqual([false, false, false, false, false]);
  expect(notes[0]?.fromCss).toBeCloseTo(scale.xAt(measurement.curve[19]?.timeS ?? 0), 9);
  expect(notes[0]?.toCss).toBeCloseTo(scale.xAt(measurement.curve[22]?.timeS ?? 0), 9);
  const words = notes.flatMap(({ wordCss, word }) => (wordCss === null ? [] : [{ wordCss, word }]));
  expect(words.length).toBeGreaterThan(1);
  expect(words.length).toBeLessThan(notes.length);
  words.slice(1).forEach(({ wordCss, word }, i) => {
    const before = words[i];
    const halves = (textWidthGuessCss(word, 15) + textWidthGuessCss(before?.word ?? '', 15)) / 2;
    expect(wordCss - (before?.wordCss ?? 0)).toBeGreaterThan(halves);
  });
});

test('gaps too narrow to be seen have one word among them, and none beside a wider one', () => {
  const words = (starts: readonly number[], frames: number) => {
    const measurement = openAt(starts, frames);
    const notes = gapNotes(
      measurement,
      gapsIn(measurement, 'stroke'),
      curveScale(measurement, shown(360)),
      openText,
    );
    return notes.map(({ narrow, wordCss }) => [narrow, wordCss !== null]);
  };
  const [alone, named] = [
    [true, false],
    [true, true],
  ];
  expect(words([10, 70, 110], 1)).toEqual([named, alone, alone]);
  expect(words([10, 70, 71, 72, 110], 1)).toEqual([alone, [false, true], alone]);
});

/** Of the one application, with gaps of so many frames. */
function openAt(starts: readonly number[], frames: number) {
  const whole = SIMULATED.one();
  const isOpen = (frame: number) => starts.some((from) => frame >= from && frame < from + frames);
  const curve = whole.curve.map((point, frame) => ({
    ...point,
    stroke: isOpen(frame) ? null : (point.stroke ?? { value: 44, u: 0.1 }),
  }));
  return { ...whole, curve, gaps: [] };
}

test('an open curve says what was not seen, or that nothing was measured though all was seen', () => {
  const three = SIMULATED.three();
  expect(gapsIn(three, 'stroke').map(({ unseen }) => unseen)).toEqual(['clevis-pin', 'clevis-pin']);
  expect(gapsIn(three, 'angle')).toEqual([{ from: 250, to: 262, unseen: 'camshaft-end' }]);
  const unposed = three.curve.map((point, i) =>
    i === 7 ? { ...point, stroke: null, armAngleRad: null } : point,
  );
  expect(gapsIn({ ...three, curve: unposed }, 'stroke')[0]).toEqual({ from: 7, to: 7, unseen: null });
  expect(openText(null)).toBe('not measured');
});
