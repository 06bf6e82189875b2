import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  beginDrag,
  cancelDrag,
  endDrag,
  type History,
  redo,
  startHistory,
  step,
  undo,
} from '../../../src/app/work/history.ts';

test('a drag is one step however many moves it has', () => {
  let history = beginDrag(startHistory(0));
  for (const value of [1, 2, 3]) history = step(history, value);
  history = endDrag(history);
  expect(history.present).toBe(3);
  expect(undo(history).present).toBe(0);
  expect(redo(undo(history)).present).toBe(3);
});

test('a drag that went nowhere is no step, and a cancelled one is none either', () => {
  expect(endDrag(beginDrag(startHistory(0))).past).toEqual([]);
  const cancelled = cancelDrag(step(beginDrag(startHistory(0)), 5));
  expect(cancelled.present).toBe(0);
  expect(cancelled.past).toEqual([]);
});

test('undo in the middle of a drag ends it and goes back to its beginning', () => {
  expect(undo(step(beginDrag(step(startHistory(0), 1)), 9)).present).toBe(1);
});

test('undoing everything gives the beginning, redoing everything the end', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1 }), { maxLength: 40 }), (values) => {
      let history: History<number> = startHistory(0);
      for (const value of values) history = step(history, value);
      const end = history.present;
      for (const _ of values) history = undo(history);
      expect(history.present).toBe(0);
      expect(undo(history).present).toBe(0);
      for (const _ of values) history = redo(history);
      expect(history.present).toBe(end);
    }),
  );
});

test('a new step after undo drops what could be redone', () => {
  const history = step(undo(step(startHistory(0), 1)), 2);
  expect(redo(history).present).toBe(2);
});
