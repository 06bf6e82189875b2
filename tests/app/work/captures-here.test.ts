import { expect, test } from 'vitest';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import { capturesHere } from '../../../src/app/work/captures-here.ts';
import { photo, recordWithPair, TARGET } from './sample.ts';

test('a wheel end is offered its own pictures and those that nothing else uses', () => {
  let record = recordWithPair();
  for (const id of ['gauge', 'other', 'free'])
    record = applyAction(record, TARGET, { type: 'add-capture', capture: photo(id) });
  record = applyAction(record, TARGET, { type: 'set-conditions', conditions: { gaugeCaptureId: 'gauge' } });
  const right = { wheelEndId: 'right-1', measurementId: 'm-2' };
  record = applyAction(record, right, { type: 'add-measurement', id: 'm-2', purpose: 'as-found' });
  record = applyAction(record, right, {
    type: 'take-view',
    state: 'released',
    captureId: 'other',
    frame: null,
  });
  const measurement = record.wheelEnds[0]?.measurements[0];
  if (!measurement) throw new Error('no measurement');
  expect(capturesHere({ record, measurement }).map(({ id }) => id)).toEqual(['a', 'b', 'free']);
});
