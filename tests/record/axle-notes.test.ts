import { expect, test } from 'vitest';
import { type AxleEnd, axleNotes } from '../../src/record/axle-notes.ts';
import { chamber, INCH } from '../finding/chambers.ts';

const known = (value: number, u = 0.3) => ({ value, u, U95: 1.96 * u });
const end = (changes: Partial<AxleEnd> = {}): AxleEnd => ({
  chamber: chamber('clamp', '30'),
  armLengthMm: known(5.5 * INCH, 1),
  strokeMm: known(40),
  isOver: false,
  ...changes,
});
const codes = (left: AxleEnd | null, right: AxleEnd | null, kind: 'drive' | 'steer' = 'drive') =>
  axleNotes(kind, left, right).map(({ code }) => code);

test('alike on both ends: nothing to say; what is not known is not compared', () => {
  expect(codes(end(), end())).toEqual([]);
  expect(codes(end(), null)).toEqual([]);
  expect(codes(end(), end({ chamber: null, armLengthMm: null, strokeMm: null }))).toEqual([]);
});

// 49 CFR 393.47(b): same size on both ends of an axle.
test('chambers of different size, kind or stroke', () => {
  expect(codes(end(), end({ chamber: chamber('clamp', '24') }))).toEqual(['axle/chamber-size-differs']);
  expect(codes(end(), end({ chamber: chamber('rotochamber', '30') }))).toEqual(['axle/chamber-kind-differs']);
  expect(codes(end(), end({ chamber: chamber('clamp', '30', { strokeClass: 'long' }) }))).toEqual([
    'axle/stroke-class-differs',
  ]);
  const rated = (inches: number) => chamber('clamp', '30', { ratedStrokeMm: inches * INCH });
  expect(codes(end({ chamber: rated(2.5) }), end({ chamber: rated(3) }))).toEqual([
    'axle/rated-stroke-differs',
  ]);
});

// 49 CFR 393.47(c): same effective length of the arms on both ends of an axle. Arms come in steps of 1/2 in.
test('arms half an inch apart differ where that is more than their U; a hair apart they are the same arm', () => {
  const arm = (inches: number, u: number) => end({ armLengthMm: known(inches * INCH, u) });
  expect(codes(arm(5.5, 1), arm(6, 1))).toEqual(['axle/arm-length-differs']);
  expect(codes(arm(5.5, 1), arm(5.6, 0.1))).toEqual([]);
  // 12.7 mm against 1.96 x sqrt(5^2 + 5^2) = 13.9 mm.
  expect(codes(arm(5.5, 5), arm(6, 5))).toEqual([]);
});

test('strokes differ where they are further apart than their joint U', () => {
  // 1.96 x sqrt(0.3^2 + 0.4^2) = 0.98 mm.
  const [note] = axleNotes('drive', end({ strokeMm: known(42) }), end({ strokeMm: known(40.9, 0.4) }));
  expect(note).toMatchObject({ code: 'axle/stroke-differs' });
  if (note?.code !== 'axle/stroke-differs') return;
  expect(note.differenceMm).toBeCloseTo(1.1, 12);
  expect(note.U95Mm).toBeCloseTo(0.98, 12);
  expect(codes(end({ strokeMm: known(42) }), end({ strokeMm: known(41.1, 0.4) }))).toEqual([]);
});

test('a steering axle is judged by itself for a stroke over the limit and for a mismatch of the law', () => {
  expect(codes(end({ isOver: true }), null, 'steer')).toEqual(['axle/steer-judged-alone']);
  expect(codes(end(), end({ chamber: chamber('clamp', '24') }), 'steer')).toEqual([
    'axle/chamber-size-differs',
    'axle/steer-judged-alone',
  ]);
  const long = end({ chamber: chamber('clamp', '30', { strokeClass: 'long' }) });
  expect(codes(end(), long, 'steer')).toEqual(['axle/stroke-class-differs']);
});
