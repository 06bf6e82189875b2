import { expect, test } from 'vitest';
import type { Chamber } from '../../src/finding/chamber.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { chamberNotes } from '../../src/record/chamber-notes.ts';
import { isLongAgainstLooks, longSigns } from '../../src/record/chamber-signs.ts';
import { limitOf } from '../../src/record/results.ts';
import type { Identification, WheelEnd } from '../../src/record/wheel-end.ts';
import { chamber, INCH } from '../finding/chambers.ts';
import { exampleRecord } from './example-record.ts';

const LOOKS: Identification = {
  portBoss: 'round',
  tag: 'none',
  marking: '',
  brake: 'service',
  captureId: null,
};
const [first] = exampleRecord().wheelEnds;

function end(looks: Partial<Identification>, of: Chamber | null = chamber('clamp', '30')): WheelEnd {
  if (!first) throw new Error('the example has wheel ends');
  return { ...first, chamber: of, identification: { ...LOOKS, ...looks } };
}

const long = chamber('clamp', '30', { strokeClass: 'long' });
const codes = (wheelEnd: WheelEnd) => chamberNotes(wheelEnd, null, US_RULE_SET).map(({ code }) => code);

test.each([
  ['24L', true],
  ['30 LS', true],
  ['L', true],
  ['TYPE 24 LONG STROKE', true],
  ['30', false],
  ['HOLLOW', false],
  ['MODEL 30', false],
  ['24S', false],
])('the marking %s: sign of long stroke %s', (marking, isSign) => {
  expect(longSigns({ ...LOOKS, marking }).includes('letter-l')).toBe(isSign);
});

test('signs of long stroke on a chamber that was called standard: said, and the lower limit stays', () => {
  const signed = end({ portBoss: 'square', captureId: 'c1' });
  expect(chamberNotes(signed, null, US_RULE_SET)).toEqual([
    { code: 'chamber/looks-long', signs: ['square-boss'] },
  ]);
  const limit = limitOf(signed, US_RULE_SET);
  expect(limit.ok && limit.value.values.map(({ limitIn }) => limitIn)).toEqual([2]);
});

test('long stroke against the looks: both limits are kept', () => {
  const against = end({}, long);
  expect(codes(against)).toEqual(['chamber/long-against-looks']);
  expect(limitOf(against, US_RULE_SET)).toMatchObject({
    ok: true,
    value: { openBecause: 'chamber-ambiguous', values: [{ limitIn: 2 }, { limitIn: 2.5 }] },
  });
  expect(isLongAgainstLooks(long, { ...LOOKS, tag: 'cannot-tell' })).toBe(true);
  expect(isLongAgainstLooks(long, { ...LOOKS, tag: 'trapezoid' })).toBe(false);
});

test('long stroke that nobody looked at is believed, and said to be without a sign', () => {
  const unseen = end({ portBoss: null, tag: null, brake: null }, long);
  expect(codes(unseen)).toEqual(['chamber/not-looked-at', 'chamber/long-without-sign']);
  const limit = limitOf(unseen, US_RULE_SET);
  expect(limit.ok && limit.value.values.map(({ limitIn }) => limitIn)).toEqual([2.5]);
});

test('what could not be told is recorded as such; a type without long stroke needs no look', () => {
  expect(codes(end({ portBoss: 'cannot-tell', brake: 'cannot-tell' }, null))).toEqual([
    'chamber/cannot-tell',
    'chamber/cannot-tell',
  ]);
  expect(codes(end({ portBoss: null, tag: null }, chamber('clamp', '9')))).toEqual([]);
});

test('proof wants a photo', () => {
  expect(codes(end({ tag: 'trapezoid' }, long))).toEqual(['chamber/no-photo-of-sign']);
});

// Outside diameters of the table: type 24 7 7/32 in = 183.36 mm, type 30 8 3/32 in = 205.58 mm.
test('a band that measures another size than the chosen type says so, and what it fits', () => {
  const band = (value: number, u: number) =>
    chamberNotes(end({ captureId: 'c1' }), { value, u, U95: 1.96 * u }, US_RULE_SET);
  expect(band(184, 2)).toMatchObject([{ code: 'chamber/band-contradicts', fits: ['24'] }]);
  expect(band(205, 2)).toEqual([]);
  expect(band(190, 8)).toEqual([]);
  expect(band(300, 2)).toMatchObject([{ code: 'chamber/band-contradicts', fits: [] }]);
  const bolted = end({}, chamber('bolt', 'C'));
  expect(chamberNotes(bolted, { value: 300, u: 1, U95: 1.96 }, US_RULE_SET)).toEqual([]);
});

// Letters of a Canadian S-cam checklist, excerpt: A 1 1/4, B 1 3/8, D 1 3/4, E 2 in.
test('a letter on the housing is held against the limit that is used', () => {
  const type = (size: string) => chamber('clamp', size);
  expect(codes(end({ marking: '30 E' }))).toEqual([]);
  expect(chamberNotes(end({ marking: '30-D' }), null, US_RULE_SET)).toEqual([
    { code: 'chamber/stroke-letter-differs', letter: 'D', limitMm: 1.75 * INCH },
  ]);
  expect(codes(end({ marking: 'b' }, type('12')))).toEqual([]);
  expect(codes(end({ marking: 'G' }, type('24')))).toEqual(['chamber/stroke-letter-not-known']);
  expect(codes(end({ marking: 'C' }, chamber('bolt', 'C')))).toEqual([]);
  expect(codes(end({ marking: 'ABC 30' }))).toEqual([]);
});
