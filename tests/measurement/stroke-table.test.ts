import { expect, test } from 'vitest';
import type { ClipMeasurement } from '../../src/measurement/clip-measurement.ts';
import { strokeTable } from '../../src/measurement/stroke-table.ts';

const CLIP: ClipMeasurement = {
  curve: [
    { timeS: 0, stroke: { value: 25.4, u: 0.254 }, armAngleRad: { value: Math.PI / 2, u: Math.PI / 180 } },
    { timeS: 1 / 3, stroke: null, armAngleRad: null },
  ],
  drawings: [],
  applications: [],
  pictured: 0,
  longer: null,
  spreadMm: null,
  square: null,
  stillScatter: 1,
  marked: [1],
  gaps: [],
  warnings: [],
};

test('lines end with CR LF, all have as many fields, a gap is empty: RFC 4180', () => {
  const text = strokeTable(CLIP, 7);
  const lines = text.split('\r\n');
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n";]/);
  expect(lines.at(-1)).toBe('');
  const [header, first, second] = lines.map((line) => line.split(','));
  expect(first?.length).toBe(header?.length);
  expect(second?.length).toBe(header?.length);
  const of = (name: string, fields: readonly string[] | undefined) => fields?.[header?.indexOf(name) ?? -1];
  expect(of('frame', first)).toBe('7');
  expect(Number(of('stroke_mm', first))).toBe(25.4);
  expect(Number(of('stroke_in', first))).toBe(1);
  expect(Number(of('u_stroke_in', first))).toBe(0.01);
  expect(Number(of('arm_angle_deg', first))).toBe(90);
  expect(of('stroke_mm', second)).toBe('');
  expect([of('marked_by_hand', first), of('marked_by_hand', second)]).toEqual(['', 'yes']);
  expect(of('time_s', second)).toBe('0.333333');
});
