import fc from 'fast-check';
import { expect, test } from 'vitest';
import { curveScale, SQUARE_RAD } from '../../../src/app/curve/curve-scale.ts';
import { nearestFrame } from '../../../src/app/curve/frame-choice.ts';
import { SIMULATED } from '../../browser/harness-curve/simulated-clip.ts';

const widths = fc.integer({ min: 320, max: 1600 });
const clips = fc.constantFrom(...(['one', 'three', 'slow'] as const));
const units = fc.constantFrom(...(['fraction', 'decimal-inch', 'mm'] as const));

test('every frame lies between the margins in order of time, and its place means it again', () => {
  fc.assert(
    fc.property(clips, widths, units, (clip, widthCss, unit) => {
      const measurement = SIMULATED[clip]();
      const scale = curveScale(measurement, { widthCss, limitMm: null, unit });
      const places = measurement.curve.map(({ timeS }) => scale.xAt(timeS));
      expect(places[0]).toBeCloseTo(scale.leftCss, 9);
      expect(places.at(-1)).toBeCloseTo(scale.rightCss, 9);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
      places.forEach((x, frame) => {
        expect(nearestFrame(measurement.curve, scale.timeAt(x))).toBe(frame);
      });
    }),
  );
});

test('stroke, U and limit lie between the head and the released line, whatever is larger', () => {
  fc.assert(
    fc.property(clips, widths, fc.double({ min: 20, max: 90, noNaN: true }), (clip, widthCss, limitMm) => {
      const measurement = SIMULATED[clip]();
      const scale = curveScale(measurement, { widthCss, limitMm, unit: 'fraction' });
      const tops = measurement.applications.map(({ strokeMm }) => strokeMm.value + strokeMm.U95);
      for (const mm of [limitMm, ...tops]) expect(scale.yAt(mm)).toBeGreaterThanOrEqual(scale.topCss);
      expect(scale.limitCss).toBe(scale.yAt(limitMm));
      expect(scale.yAt(0)).toBeLessThan(scale.baseCss);
    }),
  );
});

test('the square line has its tick and lies inside its strip; without an arm there is no strip', () => {
  const arm = curveScale(SIMULATED.one(), { widthCss: 390, limitMm: null, unit: 'mm' });
  expect(arm.angle?.ticksDeg).toContain(90);
  const y = arm.angle?.yAt(SQUARE_RAD) ?? 0;
  expect(y).toBeGreaterThan(arm.angle?.topCss ?? 0);
  expect(y).toBeLessThan(arm.angle?.baseCss ?? 0);
  const armless = curveScale(SIMULATED.slow(), { widthCss: 390, limitMm: null, unit: 'mm' });
  expect(armless.angle).toBeNull();
  expect(armless.heightCss).toBeLessThan(arm.heightCss);
});

test('time ticks never crowd', () => {
  fc.assert(
    fc.property(clips, widths, (clip, widthCss) => {
      const scale = curveScale(SIMULATED[clip](), { widthCss, limitMm: null, unit: 'mm' });
      const places = scale.timeTicks.map(scale.xAt);
      expect(places.length).toBeGreaterThan(1);
      places.slice(1).forEach((x, i) => {
        expect(x - (places[i] ?? 0)).toBeGreaterThanOrEqual(43.9);
      });
    }),
  );
});
