/** What is taken for known of a tape: how far off its print is, by what is marked of it, and how a blade bends. */
import { expect, test } from 'vitest';
import { layoutOf } from '../../src/adjustment/layout.ts';
import { priorRows } from '../../src/adjustment/prior-rows.ts';
import { bowAt } from '../../src/adjustment/tape-point.ts';
import { drawFrom } from '../../src/basics/random.ts';
import { measure } from '../../src/measurement/measure.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { simulate } from '../simulation/scene.ts';
import type { SceneOptions } from '../simulation/scene-options.ts';
import { alongBow, drawPrint } from '../simulation/tape.ts';

/** Steel, 11.5e-6 / K: 30 K, rectangular, and what a bow of 2.5 mm over a foot shortens: 8/3 (2.5/300)^2. */
const STRAIN = Math.hypot((30 * 11.5e-6) / Math.sqrt(3), (8 / 3) * (2.5 / 300) ** 2);

/**
 * Accuracy class II, between any two graduations: (0.3 + 0.2 L) mm, L in metres rounded up; Directive 2014/32/EU, annex X (MI-008),
 * from memory. A rectangular distribution of that half width has the standard uncertainty a / sqrt(3) (JCGM 100:2008, 4.3.7, from memory).
 */
const classTwoMm = (0.3 + 0.2 * 1) / Math.sqrt(3);

test.each([
  ['two marks two inches apart', [50.8, 101.6], 50.8],
  ['an inch to six', [25.4, 76.2, 152.4], 127],
] as const)('the print is known to class II over what is marked: %s', (_name, readingsMm, spanMm) => {
  const expected = classTwoMm / spanMm;
  expect(slackOf({ readingsMm }) / expected).toBeGreaterThan(1);
  expect(slackOf({ readingsMm })).toBeCloseTo(Math.hypot(expected, STRAIN), 4);
});

test('the hold that shows least tells how far; one that stays shows all', () => {
  const scene = (tapeUnmoved: boolean) => {
    const { input } = simulate({ seed: 3, reference: 'tape', sigmaPx: 1, tapeUnmoved });
    const [first, ...others] = input.views;
    if (!first) throw new Error('no view');
    const few = first.marks.filter((m) => m.kind !== 'tape-graduation' || m.readingMm < 80);
    return { ...input, views: [{ ...first, marks: few }, ...others] };
  };
  const longest = Math.max(...scene(true).views.flatMap(({ marks }) => marks.map(readingOf)));
  expect(priorOf(scene(false))).toBeCloseTo(Math.hypot(classTwoMm / 50.8, STRAIN), 4);
  expect(priorOf(scene(true))).toBeCloseTo(Math.hypot(classTwoMm / (longest - 25.4), STRAIN), 4);
});

test('the blade bends by an arc of a circle, as drawn for the simulated tapes, to some hundredths of a millimetre', () => {
  expect(alongBow(2.5, 150)[1]).toBeCloseTo(2.5, 2);
  for (const sagitta of [-5, -2.5, 2.5, 5])
    for (const s of [25, 75, 150, 225, 300]) {
      const [along, out] = alongBow(sagitta, s);
      expect(Math.abs(out - sagitta * bowAt(s).share)).toBeLessThan(0.02);
      // Twice the sagitta shortens four times as much; along the curve it runs ahead and falls behind of the chord by less.
      expect(Math.abs(along - s)).toBeLessThan(0.12 * (sagitta / 2.5) ** 2);
    }
});

test.each([
  ['two inches', [50.8, 101.6], 50.8],
  ['five inches', [25.4, 50.8, 76.2, 101.6, 127, 152.4], 127],
] as const)(
  "a stroke's share of that is the print's error over what is marked, times the stroke: %s",
  (_name, readingsMm, spanMm) => {
    const { input } = simulate({
      ...{
        seed: 3,
        reference: 'tape+band',
        uBandMm: 30,
        sigmaPx: 0.05,
        noisePx: 0,
        typical: true,
        strokeMm: 50,
        tiePoints: 16,
      },
      ...{ touchesPin: true, tapeUnmoved: true, rimPoints: 40, readingsMm },
    });
    const measured = measure(input);
    if (!measured.ok) throw new Error(measured.failure.code);
    const { budget } = measured.value.strokeMm;
    const u = budget.find(({ group }) => group === 'tape')?.u ?? Number.NaN;
    // Two marks leave the blade's bow and tilt open beside: 0.19 mm.
    expect(u).toBeGreaterThan((0.99 * 50 * classTwoMm) / spanMm);
    expect(u).toBeLessThan(Math.hypot((50 * classTwoMm) / spanMm, 0.2));
  },
);

test('a simulated tape is off by what class II allows, and by its wave and strokes', () => {
  const offs = Array.from({ length: 400 }, (_, seed) => {
    const print = drawPrint(drawFrom(seed), 0, [25.4, 152.4]);
    return print(152.4) - print(25.4) - 127;
  });
  const rms = Math.hypot(...offs) / Math.sqrt(offs.length);
  expect(Math.max(...offs.map(Math.abs))).toBeLessThan(0.5 + 0.2 + 0.4);
  expect(rms).toBeGreaterThan(classTwoMm);
  expect(rms).toBeLessThan(1.2 * classTwoMm);
});

function slackOf(options: Partial<SceneOptions>): number {
  return priorOf(simulate({ seed: 3, reference: 'tape', sigmaPx: 1, ...options }).input);
}

/** Standard uncertainty of the print's scale before any mark. */
function priorOf(input: Parameters<typeof problemFromViews>[0]): number {
  const problem = problemFromViews(input);
  if (!problem.ok) throw new Error(problem.failure.code);
  const layout = layoutOf(problem.value);
  const rows = priorRows(problem.value, layout, new Float64Array(layout.size));
  return rows.find(({ index }) => index === layout.tapeSlack)?.sigma ?? Number.NaN;
}

function readingOf(mark: { readonly kind: string; readonly readingMm?: number }): number {
  return mark.kind === 'tape-graduation' ? (mark.readingMm ?? 0) : 0;
}
