import { expect, test } from 'vitest';
import { applyToMeasurement } from '../../../src/app/work/apply-to-measurement.ts';
import { newMeasurement } from '../../../src/app/work/new-record.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { BrakeState, View } from '../../../src/marks/view.ts';
import { pointMark } from './sample.ts';

const pin: Mark = { ...pointMark('pin', 'clevis-pin'), sigmaPx: 0.8 };
const again: Mark = { ...pin, id: 'again', sigmaPx: 0.6, placedBy: 'assist', followedFrom: 'pin' };
const view = (state: BrakeState, marks: readonly Mark[]): View => ({
  state,
  captureId: state,
  frame: null,
  marks: [...marks],
});
const before = {
  ...newMeasurement('m', 'as-found'),
  views: [view('released', [pin, pointMark('face', 'chamber-face')]), view('applied', [again])],
};
const againOf = ({ views }: typeof before) => views[1]?.marks[0];

test('a point found again stands for itself, as sure as both together, once the first mark moves or goes', () => {
  const point = { xPx: 1, yPx: 2, sigmaPx: 1 };
  const moved = applyToMeasurement(before, { type: 'move-mark', state: 'released', markId: 'pin', point });
  const gone = applyToMeasurement(before, { type: 'delete-mark', state: 'released', markId: 'pin' });
  for (const after of [moved, gone]) {
    expect(againOf(after as typeof before)).toMatchObject({ id: 'again', xPx: pin.xPx, placedBy: 'assist' });
    expect(againOf(after as typeof before)?.sigmaPx).toBeCloseTo(1);
    expect(againOf(after as typeof before)).not.toHaveProperty('followedFrom');
  }
});

test('other marks leave what both share', () => {
  const after = applyToMeasurement(before, {
    type: 'move-mark',
    state: 'released',
    markId: 'face',
    point: { xPx: 1, yPx: 2, sigmaPx: 1 },
  });
  expect(againOf(after as typeof before)).toEqual(again);
});
