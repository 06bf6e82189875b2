import { expect, test } from 'vitest';
import { frameText } from '../../../src/app/curve/frame-text.ts';
import {
  ANNOTATED,
  clipWarningText,
  creepAndUText,
  tickLengthText,
  timeAndUText,
  uAngleText,
  uLengthText,
} from '../../../src/app/words/curve.ts';
import { SIMULATED } from '../../browser/harness-curve/simulated-clip.ts';

test('an uncertainty is rounded up, never down', () => {
  expect(uLengthText(0.121, 'mm')).toBe('u 0.13 mm');
  expect(uLengthText(0.1271, 'fraction')).toBe('u 0.006 in');
  expect(uLengthText(0.127, 'decimal-inch')).toBe('u 0.005 in');
  expect(uAngleText(0.004)).toBe('u 0.3°');
  expect(timeAndUText({ value: 0.2864, u: 0.0101 })).toEqual(['0.286 s', 'u 0.011 s']);
  expect(creepAndUText({ value: -0.304, u: 0.051 }, 'mm')).toEqual(['-0.30 mm/s', 'u 0.06 mm/s']);
});

test('ticks carry no places that say nothing', () => {
  expect([0, 10, 60].map((mm) => tickLengthText(mm, 'mm'))).toEqual(['0', '10', '60']);
  expect([0, 12.7, 38.1].map((mm) => tickLengthText(mm, 'fraction'))).toEqual(['0', '1/2', '1 1/2']);
  expect([0, 12.7, 38.1].map((mm) => tickLengthText(mm, 'decimal-inch'))).toEqual(['0', '0.5', '1.5']);
});

test('a frame between phases has none', () => {
  const [one, unphased] = [SIMULATED.one(), { ...SIMULATED.one(), applications: [] }];
  expect(frameText(one, 110, 'mm')).toMatch(/^frame 111 of 120, 3\.667 s, Stroke .*°, released$/);
  expect(frameText(unphased, 110, 'mm')).toMatch(/^frame 111 of 120, 3\.667 s, Stroke .*°$/);
});

test('a doubtful clock says what it means for the times and for the stroke', () => {
  const text = clipWarningText({ code: 'clip/clock-doubtful', framesPerSecond: 239.76 }, 'mm');
  expect(text).toContain('240 frames a second');
  expect(text).toContain('The stroke does not depend on it');
});

test('the note names the original by file and the first twelve digits of its SHA-256', () => {
  expect(ANNOTATED.note('application.mp4', '4c190851889fabcdef')).toContain(
    'application.mp4, SHA-256 4c190851889f…',
  );
  expect(ANNOTATED.fileName('yard.front.MOV', 'mp4')).toBe('yard.front-with-lines.mp4');
});
