import { expect, test } from 'vitest';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import { gaveViews } from '../../../src/app/work/followed-from.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { View } from '../../../src/marks/view.ts';
import type { MeasurementInput } from '../../../src/record/measurement-input.ts';
import type { InspectionRecord } from '../../../src/record/record.ts';
import { graduation, pointMark, recordWithPair, TARGET } from './sample.ts';

const measurementOf = (record: InspectionRecord): MeasurementInput => {
  const measurement = record.wheelEnds[0]?.measurements[0];
  if (!measurement) throw new Error('no measurement');
  return measurement;
};

/** The pair's released picture with a pin and a graduation, both followed into the applied one. */
function followedRecord(): InspectionRecord {
  const record = recordWithPair();
  const [released, applied] = measurementOf(record).views as readonly [View, View];
  const [pin, reading] = [pointMark('pin', 'clevis-pin'), graduation('g', 50.8)];
  const from = (mark: Mark): Mark => ({
    ...mark,
    id: `${mark.id}@9`,
    placedBy: 'tracker',
    followedFrom: mark.id,
  });
  const column = [100];
  return applyAction(record, TARGET, {
    type: 'take-followed',
    views: [
      { ...released, marks: [pin, reading] },
      { ...applied, marks: [from(pin), from(reading)] },
    ],
    followed: {
      track: {
        id: 't',
        captureId: released.captureId,
        state: 'released',
        seed: { index: 0, timeTicks: 0 },
        corrections: [],
        firstIndex: 0,
        timeTicks: [0],
        points: [
          { kind: 'clevis-pin', markId: 'pin', xCentiPx: column, yCentiPx: column, sigmaMilliPx: column },
        ],
      },
      sideViews: [],
    },
  });
}

test('a seed that moves, or goes, takes back what was followed from it; other marks change nothing', () => {
  const before = followedRecord();
  const moved = applyAction(before, TARGET, {
    type: 'move-mark',
    state: 'released',
    markId: 'pin',
    point: { xPx: 1, yPx: 2, sigmaPx: 1 },
  });
  const gone = applyAction(before, TARGET, { type: 'delete-mark', state: 'released', markId: 'pin' });
  for (const after of [moved, gone].map(measurementOf)) {
    expect(after.followed).toBeNull();
    expect(after.views.find(({ state }) => state === 'applied')?.marks).toEqual([]);
  }
  const mark = pointMark('rod', 'rod-line');
  const other = applyAction(before, TARGET, { type: 'place-mark', state: 'released', mark });
  expect(measurementOf(other).followed).not.toBeNull();
});

test('a track that gave no views goes with its seed as well', () => {
  const before = followedRecord();
  const { views, followed } = measurementOf(before);
  if (!followed) throw new Error('not followed');
  const bare = views.map((view) => ({
    ...view,
    marks: view.marks.filter(({ placedBy }) => placedBy !== 'tracker'),
  }));
  const kept = applyAction(before, TARGET, { type: 'take-followed', views: bare, followed });
  expect([before, kept].map((record) => gaveViews(measurementOf(record)))).toEqual([true, false]);
  const point = { xPx: 1, yPx: 2, sigmaPx: 1 };
  const moved = applyAction(kept, TARGET, { type: 'move-mark', state: 'released', markId: 'pin', point });
  expect(measurementOf(moved).followed).toBeNull();
});

test('a mark found again beside one that the followed view takes the place of stands for itself', () => {
  const before = followedRecord();
  const { views, followed } = measurementOf(before);
  const [released, applied] = views as readonly [View, View];
  if (!followed) throw new Error('not followed');
  const found: Mark = { ...pointMark('found', 'clevis-pin'), placedBy: 'assist', followedFrom: 'pin@9' };
  const act = (marks: readonly Mark[]) => ({
    type: 'take-followed' as const,
    views: [
      { ...released, marks: [found] },
      { ...applied, marks },
    ],
    followed,
  });
  const after = applyAction(applyAction(before, TARGET, act(applied.marks)), TARGET, act([]));
  const [mark] = measurementOf(after).views.flatMap(({ marks }) => marks);
  expect(mark).toMatchObject({ id: 'found', placedBy: 'assist' });
  expect(mark).not.toHaveProperty('followedFrom');
});

test('a graduation that is read anew is read so wherever it was followed to', () => {
  const after = applyAction(followedRecord(), TARGET, {
    type: 'set-reading',
    state: 'released',
    markId: 'g',
    readingMm: 76.2,
  });
  const marks = measurementOf(after).views.flatMap((view) => view.marks);
  expect(marks.filter(({ kind }) => kind === 'tape-graduation')).toMatchObject([
    { id: 'g', readingMm: 76.2 },
    { id: 'g@9', readingMm: 76.2 },
  ]);
});

test('a followed mark that a hand moves stands for itself', () => {
  const point = { xPx: 5, yPx: 6, sigmaPx: 1 };
  const after = applyAction(followedRecord(), TARGET, {
    type: 'move-mark',
    state: 'applied',
    markId: 'pin@9',
    point,
  });
  const mark = measurementOf(after)
    .views.flatMap((view) => view.marks)
    .find(({ id }) => id === 'pin@9');
  expect(mark).toMatchObject({ ...point, placedBy: 'hand' });
  expect(mark).not.toHaveProperty('followedFrom');
});
