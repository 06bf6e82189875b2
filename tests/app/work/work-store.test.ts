import { expect, test } from 'vitest';
import { createWorkStore } from '../../../src/app/work/work-store.ts';
import { exampleRecord } from '../../record/example-record.ts';
import { pointMark, recordWithPair, TARGET } from './sample.ts';

const NEW = { id: 'kept', place: null };

function opened() {
  const work = createWorkStore();
  work.openRecord(recordWithPair(), NEW);
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
  expect(placeOf(again)?.screen).toBe('inspection');
});

test('a record of one measurement opens at it, one without at the whole inspection', () => {
  const work = opened();
  expect(placeOf(work)).toMatchObject({ screen: 'measuring', target: TARGET });
  work.openRecord({ ...recordWithPair(), wheelEnds: [] }, NEW);
  expect(placeOf(work)?.screen).toBe('inspection');
});

test('the history tells each kind of work once, and what was taken back', () => {
  const work = opened();
  const told = () => recordOf(work)?.history.map(({ act, place }) => `${act} ${place}`);
  work.placeMark('released', pointMark('p', 'clevis-pin'), true);
  work.placeMark('released', pointMark('q', 'camshaft-end'), true);
  work.act({ type: 'set-conditions', conditions: { engineOff: 'yes' } });
  expect(told()).toEqual(['started ', 'changed 1-left/as-found/marks', 'changed conditions']);
  work.undo();
  expect(recordOf(work)?.conditions.engineOff).toBeNull();
  expect(told()?.at(-2)).toBe('changed conditions');
  expect(told()?.at(-1)).toBe('undone ');
});

test('a step of marking shows its picture; in the others either can be shown', () => {
  const work = opened();
  work.goTo('marks-applied');
  expect(placeOf(work)).toMatchObject({ step: 'marks-applied', shown: 'applied' });
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
  expect(recordOf(work)?.wheelEnds).toBe(marked?.wheelEnds);
  expect(recordOf(work)?.history.map(({ act }) => act)).toEqual(['started', 'changed', 'undone', 'redone']);
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

test('that the player gave frames of a clip stays whatever is undone, is told once, and is no step', () => {
  const work = createWorkStore();
  work.openRecord(exampleRecord(), NEW);
  const framesBy = () => recordOf(work)?.captures.flatMap(({ clip }) => clip?.framesBy ?? []);
  const lines = () => recordOf(work)?.history.length ?? 0;
  work.act({ type: 'set-vehicle', vehicle: { unit: 'GT-15' } });
  work.act({ type: 'set-vehicle', vehicle: { unit: 'GT-16' } });
  work.undo();
  const before = lines();
  work.notePlayed('c6');
  work.notePlayed('c6');
  work.notePlayed('c1');
  expect(framesBy()).toEqual(['player']);
  expect(lines()).toBe(before + 1);
  expect(recordOf(work)?.history.at(-1)).toMatchObject({ act: 'changed', place: 'pictures' });
  work.redo();
  expect(recordOf(work)?.vehicle.unit).toBe('GT-16');
  expect(framesBy()).toEqual(['player']);
  work.undo();
  work.undo();
  expect(recordOf(work)?.vehicle.unit).toBe(exampleRecord().vehicle.unit);
  expect(framesBy()).toEqual(['player']);
});
