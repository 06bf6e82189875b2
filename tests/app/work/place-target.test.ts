import { expect, test } from 'vitest';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import { recordWithPair, TARGET } from './sample.ts';

const corner = (id: string, marker: number): Mark => ({
  kind: 'target-corner',
  id,
  marker,
  corner: 0,
  xPx: 10,
  yPx: 20,
  sigmaPx: 0.1,
  placedBy: 'assist',
});
const pin: Mark = { kind: 'clevis-pin', id: 'pin', xPx: 1, yPx: 2, sigmaPx: 1, placedBy: 'hand' };

test('found corners take the place of those found before, on their picture only; other marks stay', () => {
  let record = applyAction(recordWithPair(), TARGET, { type: 'place-mark', state: 'released', mark: pin });
  for (const ids of [['a', 'b'], ['c']])
    record = applyAction(record, TARGET, {
      type: 'place-target',
      state: 'released',
      marks: ids.map((id, marker) => corner(id, marker)),
    });
  const views = record.wheelEnds[0]?.measurements[0]?.views ?? [];
  expect(views.map(({ marks }) => marks.map(({ id }) => id))).toEqual([['pin', 'c'], []]);
});
