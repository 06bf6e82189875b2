import { expect, test } from 'vitest';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import type { Repair } from '../../src/record/repair.ts';
import { repairNotes } from '../../src/record/repair-notes.ts';
import type { WheelEnd } from '../../src/record/wheel-end.ts';
import { exampleRecord } from './example-record.ts';

const REPAIR: Repair = {
  id: 'r',
  at: '2026-05-12T11:02:00.000Z',
  by: '',
  cause: null,
  work: 'Turned the hex in.',
  parts: [],
  newAdjuster: null,
  adjustedByHand: true,
  setFreeStrokeMm: null,
};
const [first] = exampleRecord().wheelEnds;

function codes(adjuster: WheelEnd['adjuster'], repair: Partial<Repair>): string[] {
  if (!first) throw new Error('the example has wheel ends');
  const wheelEnd = { ...first, adjuster, repairs: [{ ...REPAIR, ...repair }] };
  return repairNotes(wheelEnd, US_RULE_SET).map(({ code }) => code);
}

// NTSB HAR-06/01 (excerpt): setting an automatic adjuster by hand hides the cause.
test('an automatic adjuster turned by hand is no repair, unless a cause or a part is named', () => {
  expect(codes('automatic', {})).toEqual(['repair/adjusting-is-no-repair']);
  expect(codes('automatic', { cause: 'not-found', parts: [' '] })).toEqual(['repair/adjusting-is-no-repair']);
  expect(codes('automatic', { cause: 'clevis-worn' })).toEqual([]);
  expect(codes('automatic', { parts: ['Clevis pin'] })).toEqual([]);
  expect(codes('automatic', { adjustedByHand: false })).toEqual([]);
});

test('a manual adjuster is meant to be turned; one that nobody knows is asked for', () => {
  expect(codes('manual', {})).toEqual([]);
  expect(codes(null, {})).toEqual(['repair/adjusting-may-be-no-repair']);
  expect(codes('manual', { newAdjuster: 'automatic' })).toEqual(['repair/adjusting-is-no-repair']);
});

test('the free stroke that was set is held against the usual range', () => {
  const set = (setFreeStrokeMm: number) => codes('manual', { setFreeStrokeMm });
  expect(set(6)).toEqual(['repair/free-stroke-set-short']);
  expect(set(12.7)).toEqual([]);
  expect(set(17.5)).toEqual(['repair/free-stroke-makers-differ']);
  expect(set(25)).toEqual(['repair/free-stroke-set-long']);
});
