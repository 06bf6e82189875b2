import { expect, test } from 'vitest';
import type { Action } from '../../../src/app/work/actions.ts';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import { CAUSE_CHECKS } from '../../../src/finding/causes.ts';
import { openRecord } from '../../../src/record/open-record.ts';
import type { InspectionRecord } from '../../../src/record/record.ts';
import { recordText } from '../../../src/record/save-record.ts';
import { emptyRecord, graduation, photo, pointMark, recordWithPair, TARGET } from './sample.ts';

const apply = (record: InspectionRecord, ...actions: readonly Action[]) =>
  actions.reduce((before, action) => applyAction(before, TARGET, action), record);
const measurementOf = (record: InspectionRecord) => {
  const measurement = record.wheelEnds[0]?.measurements[0];
  if (!measurement) throw new Error('no measurement');
  return measurement;
};
const marksOf = (record: InspectionRecord, state: string) =>
  measurementOf(record).views.find((view) => view.state === state)?.marks;

test('every action leaves the record it was given as it was, and its result opens as a record', () => {
  const before = recordWithPair();
  const text = recordText(before);
  const after = apply(
    before,
    { type: 'set-vehicle', vehicle: { unit: 'GT-09' } },
    { type: 'set-position', position: { axle: 3, side: 'right' } },
    {
      type: 'set-chamber',
      chamber: { family: 'clamp', type: '30', strokeClass: 'long', ratedStrokeMm: 76.2, markedLimitMm: null },
    },
    { type: 'set-references', references: { tape: { zeroAtFace: true, unmoved: false, touchesPin: false } } },
    { type: 'set-camera-still', cameraStill: true },
    { type: 'place-mark', state: 'released', mark: graduation('g', 101.6) },
    { type: 'set-reading', state: 'released', markId: 'g', readingMm: 127 },
    { type: 'move-mark', state: 'released', markId: 'g', point: { xPx: 1, yPx: 2, sigmaPx: 0.7 } },
    { type: 'set-over-stroke', state: 'applied', sight: { sight: 'seen', crop: null, proposal: null } },
  );
  expect(recordText(before)).toBe(text);
  expect(openRecord(recordText(after)).ok).toBe(true);
  expect(marksOf(after, 'released')).toEqual([
    { id: 'g', kind: 'tape-graduation', readingMm: 127, xPx: 1, yPx: 2, sigmaPx: 0.7, placedBy: 'hand' },
  ]);
});

test('a mark moved by hand is no longer an automatic one', () => {
  const record = apply(
    recordWithPair(),
    { type: 'place-mark', state: 'applied', mark: pointMark('p', 'clevis-pin') },
    { type: 'move-mark', state: 'applied', markId: 'p', point: { xPx: 5, yPx: 6, sigmaPx: 2 } },
  );
  expect(marksOf(record, 'applied')).toEqual([
    { id: 'p', kind: 'clevis-pin', xPx: 5, yPx: 6, sigmaPx: 2, placedBy: 'hand' },
  ]);
  expect(marksOf(record, 'released')).toEqual([]);
});

test('another picture begins without the marks and the sight of the old one; the same picture keeps them', () => {
  const marked = apply(
    recordWithPair(),
    { type: 'place-mark', state: 'applied', mark: pointMark('p', 'clevis-pin') },
    { type: 'set-over-stroke', state: 'applied', sight: { sight: 'not-seen', crop: null, proposal: null } },
  );
  const same = apply(marked, { type: 'take-view', state: 'applied', captureId: 'b', frame: null });
  expect(same).toEqual(marked);
  const other = apply(
    marked,
    { type: 'add-capture', capture: photo('c') },
    { type: 'take-view', state: 'applied', captureId: 'c', frame: null },
  );
  expect(marksOf(other, 'applied')).toEqual([]);
  expect(measurementOf(other).overStrokeMark.applied).toBeNull();
});

test('swapping takes marks and sights along', () => {
  const swapped = apply(
    recordWithPair(),
    { type: 'place-mark', state: 'released', mark: pointMark('p', 'clevis-pin') },
    { type: 'set-over-stroke', state: 'released', sight: { sight: 'seen', crop: null, proposal: null } },
    { type: 'swap-views' },
  );
  expect(measurementOf(swapped).views.map(({ state, captureId }) => [state, captureId])).toEqual([
    ['released', 'b'],
    ['applied', 'a'],
  ]);
  expect(marksOf(swapped, 'applied')).toHaveLength(1);
  expect(measurementOf(swapped).overStrokeMark).toEqual({
    released: null,
    applied: { sight: 'seen', crop: null, proposal: null },
    bandColour: null,
  });
});

test('two wheel ends are not put to one place', () => {
  const record = emptyRecord();
  const right = { wheelEndId: 'right-1', measurementId: null };
  const told: readonly Action[] = [
    { type: 'set-wheel-end', facts: { notes: 'Seen from below.' } },
    { type: 'set-wheel-end', facts: { photos: [{ captureId: 'a', caption: '' }] } },
    { type: 'set-identification', identification: { marking: '30L' } },
    { type: 'answer-check', check: CAUSE_CHECKS[0], answer: 'no' },
  ];
  for (const action of told) {
    const both = applyAction(record, right, action);
    const stays = apply(both, { type: 'set-position', position: { axle: 1, side: 'right' } });
    expect(stays).toBe(both);
  }
  const changed = apply(record, { type: 'set-position', position: { axle: 1, side: 'right' } });
  expect(changed.wheelEnds.map(({ id, position }) => [id, position.side])).toEqual([
    ['left-1', 'right'],
    ['right-1', 'left'],
  ]);
  expect(openRecord(recordText(changed)).ok).toBe(true);
});

test('a vehicle is made of axles; the wheel ends behind a removed one move up', () => {
  const three = apply(
    emptyRecord(),
    { type: 'add-axle', kind: 'trailer', wheelEndIds: ['left-2', 'right-2'] },
    { type: 'add-axle', kind: 'lift', wheelEndIds: ['left-3', 'right-3'] },
  );
  expect(three.vehicle.axles.map(({ kind }) => kind)).toEqual(['trailer', 'trailer', 'lift']);
  const two = apply(three, { type: 'remove-axle', axle: 2 });
  expect(two.wheelEnds.map(({ id, position }) => `${id} at ${position.axle}`)).toEqual([
    'left-1 at 1',
    'right-1 at 1',
    'left-3 at 2',
    'right-3 at 2',
  ]);
  expect(openRecord(recordText(two)).ok).toBe(true);
});

test('a line is put in place of the one of its id, and dropped by it', () => {
  const reading = {
    id: 'h1',
    purpose: 'as-found',
    quantity: 'stroke',
    releasedMm: 100,
    appliedMm: 140,
    graduationMm: 1,
  } as const;
  const put = (appliedMm: number): Action => ({
    type: 'put-line',
    list: 'handReadings',
    line: { ...reading, appliedMm },
  });
  const twice = apply(emptyRecord(), put(140), put(150));
  expect(twice.wheelEnds[0]?.handReadings).toEqual([{ ...reading, appliedMm: 150 }]);
  const none = apply(twice, { type: 'drop-line', list: 'handReadings', id: 'h1' });
  expect(none.wheelEnds[0]?.handReadings).toEqual([]);
});

test('an answer to a check replaces the earlier one and can be taken back', () => {
  const answers = (...given: readonly ('yes' | 'no' | null)[]) =>
    apply(
      emptyRecord(),
      ...given.map((answer): Action => ({ type: 'answer-check', check: 'adjuster-turns', answer })),
    ).wheelEnds[0]?.causeAnswers;
  expect(answers('yes', 'no')).toEqual([{ check: 'adjuster-turns', answer: 'no' }]);
  expect(answers('yes', null)).toEqual([]);
});
