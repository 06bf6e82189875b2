import { expect, test } from 'vitest';
import type { Chamber } from '../../src/finding/chamber.ts';
import { type Limit, limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { chamber, INCH } from './chambers.ts';

function limitOf(wanted: Chamber): Limit {
  const limit = limitFor(wanted, US_RULE_SET);
  if (!limit.ok) throw new Error(limit.failure.code);
  return limit.value;
}

function inchesOf(wanted: Chamber): number[] {
  return limitOf(wanted).values.map((value) => value.limitIn);
}

function codesOf(wanted: Chamber): string[] {
  return limitOf(wanted).notes.map((note) => note.code);
}

test('no proof of long stroke: the standard limit holds, and the note says so', () => {
  expect(inchesOf(chamber('clamp', '30'))).toEqual([2]);
  expect(limitOf(chamber('clamp', '30')).notes).toEqual([
    { code: 'limit/long-stroke-not-proven', longLimitMm: 63.5 },
  ]);
  expect(codesOf(chamber('clamp', '6'))).toEqual([]);
});

test('a stamped rated stroke is not the limit', () => {
  const stamped = chamber('clamp', '30', { ratedStrokeMm: 2.5 * INCH });
  expect(inchesOf(stamped)).toEqual([2]);
  const long = chamber('clamp', '30', { strokeClass: 'long', ratedStrokeMm: 3 * INCH });
  expect(inchesOf(long)).toEqual([2.5]);
  expect(codesOf(long)).toEqual([]);
});

test('a standard chamber stamped with a longer rated stroke keeps the standard limit and asks for the mark', () => {
  const stamped = chamber('clamp', '30', { ratedStrokeMm: 3 * INCH });
  expect(inchesOf(stamped)).toEqual([2]);
  expect(codesOf(stamped)).toContain('limit/rated-stroke-suggests-long');
});

test('called long but stamped with the standard rated stroke: both limits stay open', () => {
  const doubtful = chamber('clamp', '30', { strokeClass: 'long', ratedStrokeMm: 2.5 * INCH });
  expect(limitOf(doubtful)).toMatchObject({
    openBecause: 'chamber-ambiguous',
    values: [{ limitIn: 2 }, { limitIn: 2.5 }],
  });
  expect(codesOf(doubtful)).toEqual(['limit/rated-stroke-contradicts-long']);
});

test('a 24 stamped 2.5 in is ambiguous', () => {
  const standard = chamber('clamp', '24', { ratedStrokeMm: 2.5 * INCH });
  expect(inchesOf(standard)).toEqual([1.75]);
  expect(codesOf(standard)).toContain('limit/rated-stroke-ambiguous');
  const long = chamber('clamp', '24', { strokeClass: 'long', ratedStrokeMm: 2.5 * INCH });
  expect(limitOf(long)).toMatchObject({
    openBecause: 'chamber-ambiguous',
    values: [{ limitIn: 1.75 }, { limitIn: 2 }],
  });
  expect(codesOf(long)).toEqual(['limit/rated-stroke-ambiguous']);
});

test.each(['20', '24'])('long stroke %s: 2 1/2 in only with a rated stroke of 3 in', (type) => {
  const unknown = chamber('clamp', type, { strokeClass: 'long' });
  expect(inchesOf(unknown)).toEqual([2]);
  expect(codesOf(unknown)).toEqual(['limit/rated-stroke-not-proven']);
  expect(inchesOf({ ...unknown, ratedStrokeMm: 76 })).toEqual([2.5]);
  expect(inchesOf({ ...unknown, ratedStrokeMm: 2.75 * INCH })).toEqual([2]);
  // Three inches on a chamber that is not proven to be of long stroke: standard.
  expect(inchesOf(chamber('clamp', type, { ratedStrokeMm: 76.2 }))).toEqual([1.75]);
});

test('type 36: the note names both values', () => {
  const [note] = limitOf(chamber('clamp', '36')).notes;
  expect(note?.code).toBe('limit/editions-differ');
  expect(note).toMatchObject({ higherMm: 63.5 });
});

test('a limit marked on a listed chamber does not replace the table', () => {
  const marked = chamber('clamp', '30', { markedLimitMm: 2.25 * INCH });
  expect(inchesOf(marked)).toEqual([2]);
  expect(codesOf(marked)).toContain('limit/marked-limit-differs');
  expect(codesOf(chamber('clamp', '30', { markedLimitMm: 51 }))).not.toContain('limit/marked-limit-differs');
});

// 49 CFR 393.47(e)(2): not over 80 % of the rated stroke marked, nor over a limit that the maker marked.
test('an unlisted chamber: the smaller of 80 % of the rated stroke and the marked limit', () => {
  const limitMm = (ratedStrokeMm: number | null, markedLimitMm: number | null) =>
    limitOf(chamber('unlisted', 'X', { ratedStrokeMm, markedLimitMm })).values[0].limitMm;
  expect(limitMm(100, 90)).toBeCloseTo(80, 12);
  expect(limitMm(100, 70)).toBeCloseTo(70, 12);
  expect(limitMm(100, null)).toBeCloseTo(80, 12);
  expect(limitMm(null, 70)).toBeCloseTo(70, 12);
  expect(codesOf(chamber('unlisted', 'X', { ratedStrokeMm: 100 }))).toEqual(['limit/marked-limit-unknown']);
  expect(codesOf(chamber('unlisted', 'X', { markedLimitMm: 70 }))).toEqual(['limit/rated-stroke-unknown']);
  expect(limitOf(chamber('unlisted', 'X', { markedLimitMm: 70 })).row).toBeNull();
});

test.each<[Chamber | null, string]>([
  [null, 'limit/chamber-unknown'],
  [chamber('unlisted', 'X'), 'limit/nothing-marked'],
  [chamber('clamp', '31'), 'limit/type-not-listed'],
  [chamber('bolt', '30'), 'limit/type-not-listed'],
  [chamber('clamp', '36', { strokeClass: 'long' }), 'limit/no-long-stroke-listed'],
  [chamber('dd3', '30', { strokeClass: 'long' }), 'limit/no-long-stroke-listed'],
])('%o has no limit: %s', (wanted, code) => {
  expect(limitFor(wanted, US_RULE_SET)).toMatchObject({ ok: false, failure: { code } });
});
