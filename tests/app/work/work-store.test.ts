import { expect, test } from 'vitest';
import { createWorkStore } from '../../../src/app/work/work-store.ts';
import { pointMark, recordWithPair } from './sample.ts';

const NEW = { id: 'kept', place: null };

function opened() {
  const work = createWorkStore();
  expect(work.openRecord(recordWithPair(), NEW)).toBe(true);
  return work;
}
const placeOf = (work: ReturnType<typeof createWorkStore>) => work.getState().open?.place;
const recordOf = (work: ReturnType<typeof createWorkStore>) => work.getState().open?.history.present;

test('opens at the pictures, and at the kept place where that still fits', () => {
  const work = opened();
  expect(placeOf(work)?.step).toBe('pictures');
  work.goTo('chamber');
  const record = recordOf(work);
  const kept = placeOf(work);
  if (!record || !kept) throw new Error('nothing open');
  const again = createWorkStore();
  again.openRecord(record, { id: 'kept', place: kept });
  expect(placeOf(again)?.step).toBe('chamber');
  again.openRecord(record, {
    id: 'kept',
    place: { ...kept, target: { wheelEndId: 'gone', measurementId: 'gone' } },
  });
  expect(placeOf(again)?.step).toBe('pictures');
});

test('a record without a measurement is not opened, and the work at hand stays', () => {
  const work = opened();
  const before = recordOf(work);
  expect(work.openRecord({ ...recordWithPair(), wheelEnds: [] }, NEW)).toBe(false);
  expect(recordOf(work)).toBe(before);
});

test('in the steps of marking, showing the other picture goes to its step', () => {
  const work = opened();
  work.goTo('marks-released');
  work.show('applied');
  expect(placeOf(work)?.step).toBe('marks-applied');
  work.goTo('chamber');
  work.show('released');
  expect(placeOf(work)).toMatchObject({ step: 'chamber', shown: 'released' });
});

test('undo takes the mark back and redo brings it again; the place is no step of it', () => {
  const work = opened();
  work.goTo('marks-released');
  work.placeMark('released', pointMark('p', 'clevis-pin'), true);
  const marked = recordOf(work);
  work.goTo('finding');
  work.undo();
  expect(recordOf(work)?.wheelEnds[0]?.measurements[0]?.views[0]?.marks).toEqual([]);
  expect(placeOf(work)?.step).toBe('finding');
  work.redo();
  expect(recordOf(work)).toBe(marked);
});

test('setting a mark once more holds for one mark', () => {
  const work = opened();
  work.goTo('marks-released');
  work.placeMark('released', pointMark('p', 'clevis-pin'), true);
  work.setOnceMore('clevis-pin');
  expect(placeOf(work)).toMatchObject({ pickedKind: 'clevis-pin', onceMore: true });
  work.placeMark('released', pointMark('p2', 'clevis-pin'), false);
  expect(placeOf(work)).toMatchObject({ pickedKind: null, onceMore: false });
  expect(recordOf(work)?.wheelEnds[0]?.measurements[0]?.views[0]?.marks).toHaveLength(2);
});
