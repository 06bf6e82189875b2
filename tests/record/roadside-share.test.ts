// Worked cases of the roadside criterion, second-hand: a trade article of August 2021 quoting a state officer, and a truck maker's
// manual: 1/4 in or more past the limit is one defective brake, less a half, two halves are one; out of service from 20 % of the
// combination's brakes on, which is two of ten.
import { expect, test } from 'vitest';
import type { Chamber } from '../../src/finding/chamber.ts';
import { decideByHand } from '../../src/finding/decision.ts';
import { limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import type { PurposeResults } from '../../src/record/purpose-results.ts';
import { type BrakeResults, roadsideShare } from '../../src/record/roadside-share.ts';
import { chamber, INCH } from '../finding/chambers.ts';

const U = 0.2;

/** A brake that was read at this stroke. */
function brake(strokeIn: number, type: Chamber = chamber('clamp', '30')): PurposeResults {
  const limit = limitFor(type, US_RULE_SET);
  if (!limit.ok) throw new Error(limit.failure.code);
  const stroke = { value: strokeIn * INCH, u: U, U95: 1.96 * U };
  const finding = decideByHand(stroke, limit.value, US_RULE_SET);
  return {
    purpose: 'as-found',
    measurement: null,
    handReadings: [],
    state: finding.outcome,
    basis: 'hand',
    strokeMm: { ...stroke, basis: 'hand' },
    finding,
    differenceMm: null,
    freeStrokeMm: null,
    powerStrokeMm: null,
    contradicted: false,
  };
}

const brakes = (...results: readonly (PurposeResults | null)[]): BrakeResults[] =>
  results.map((one, i) => ({
    position: { axle: Math.floor(i / 2) + 1, side: i % 2 === 0 ? 'left' : 'right' },
    results: one,
  }));
const good = (count: number) => Array.from({ length: count }, () => brake(1.5));
const share = (...results: readonly (PurposeResults | null)[]) =>
  roadsideShare(brakes(...results), US_RULE_SET);

test.each([
  // Limit of type 30: 2 in.
  ['within', 1.75, 0, 0],
  ['1/8 in past', 2.125, 0.5, 0.5],
  ['5/16 in past', 2.3125, 1, 1],
  ['1/4 in past to a hair: one or a half', 2.25, 0.5, 1],
  ['at the limit to a hair: none or a half', 2, 0, 0.5],
])('one brake, %s', (_what, strokeIn, least, most) => {
  expect(share(brake(strokeIn)).counts[0]).toMatchObject({ least, most });
});

test('ten brakes: two are 20 %, by whole brakes or by halves', () => {
  const [over, past] = [brake(2.5), brake(2.125)];
  expect(share(over, over, ...good(8))).toMatchObject({ least: 2, most: 2, reached: 'yes' });
  expect(share(past, past, past, past, ...good(6))).toMatchObject({ least: 2, most: 2, reached: 'yes' });
  expect(share(over, past, past, ...good(7))).toMatchObject({ least: 2, most: 2, reached: 'yes' });
  expect(share(over, past, ...good(8))).toMatchObject({ least: 1.5, most: 1.5, reached: 'no' });
  expect(share(over, ...good(9))).toMatchObject({ least: 1, most: 1, reached: 'no' });
});

test('whether a half left alone counts is not known: open', () => {
  // 20 % of twelve brakes are 2.4: two and a half reach it only with the half.
  expect(share(brake(2.5), brake(2.5), brake(2.125), ...good(9))).toMatchObject({
    least: 2.5,
    most: 2.5,
    reached: 'open',
  });
});

test('brakes that were not measured are named, and leave it open', () => {
  const counted = share(brake(2.5), null, ...good(8));
  expect(counted).toMatchObject({ brakes: 10, least: 1, most: 2, reached: 'open' });
  expect(counted.unknown).toEqual([{ axle: 1, side: 'right' }]);
});

test('every share of 20 % that is a whole number of brakes is reached by that number', () => {
  for (let fifth = 1; fifth <= 8; fifth++) {
    const over = Array.from({ length: fifth }, () => brake(2.5));
    expect(share(...over, ...good(4 * fifth)).reached).toBe('yes');
    expect(share(...over.slice(1), ...good(4 * fifth + 1)).reached).toBe('no');
  }
});

test('two editions of one limit: the count holds where both agree', () => {
  // Type 36: 2 1/4 or 2 1/2 in. 2 9/16 in is 5/16 past the one and 1/16 past the other; 2 3/8 in is past the lower one only.
  const type = chamber('clamp', '36');
  expect(share(brake(2.5625, type)).counts[0]).toMatchObject({ least: 0.5, most: 1 });
  expect(share(brake(2.375, type)).counts[0]).toMatchObject({ least: 0, most: 0.5 });
});

test('no brake, no share', () => {
  expect(share()).toMatchObject({ brakes: 0, reached: 'no' });
});
