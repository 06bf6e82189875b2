/** A record to work on in these tests, and marks for it. Ids are counted, so that a failure can be read. */

import type { Action, Target } from '../../../src/app/work/actions.ts';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import { newRecord } from '../../../src/app/work/new-record.ts';
import type { Capture } from '../../../src/captures/capture.ts';
import type { Mark, MarkKind } from '../../../src/marks/mark.ts';
import type { InspectionRecord } from '../../../src/record/record.ts';

export const TARGET: Target = { wheelEndId: 'left-1', measurementId: 'm-1' };

export function photo(id: string): Capture {
  return {
    id,
    kind: 'photo',
    fileName: `${id}.jpg`,
    mediaType: 'image/jpeg',
    sizeBytes: 1000,
    sha256: id.charCodeAt(0).toString(16).padStart(64, '0'),
    widthPx: 4000,
    heightPx: 3000,
    rotationDeg: 0,
    takenAt: null,
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: 26,
    clip: null,
  };
}

export function emptyRecord(): InspectionRecord {
  const record = newRecord({
    id: 'id-1',
    createdAt: '2026-05-12T09:41:07.000Z',
    unit: 'GT-14',
    ruleSetId: 'us-49-cfr-393-47',
  });
  const actions: readonly Action[] = [
    { type: 'add-axle', kind: 'trailer', wheelEndIds: ['left-1', 'right-1'] },
    { type: 'add-measurement', id: 'm-1', purpose: 'as-found' },
  ];
  return actions.reduce((before, action) => applyAction(before, TARGET, action), record);
}

export function recordWithPair(): InspectionRecord {
  let record = emptyRecord();
  for (const [id, state] of [
    ['a', 'released'],
    ['b', 'applied'],
  ] as const) {
    record = applyAction(record, TARGET, { type: 'add-capture', capture: photo(id) });
    record = applyAction(record, TARGET, { type: 'take-view', state, captureId: id, frame: null });
  }
  return record;
}

export function pointMark(
  id: string,
  kind: Exclude<MarkKind, 'tape-graduation' | 'tie-point' | 'target-corner'>,
): Mark {
  return { id, kind, xPx: 10, yPx: 20, sigmaPx: 1, placedBy: 'assist' };
}

export function graduation(id: string, readingMm: number): Mark {
  return { id, kind: 'tape-graduation', readingMm, xPx: 10, yPx: 20, sigmaPx: 1, placedBy: 'hand' };
}
