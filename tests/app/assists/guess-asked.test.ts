import { expect, test } from 'vitest';
import { marksFound } from '../../../src/app/assists/assist-asked.ts';
import { guessAsked, guessedEnds, notGuessed } from '../../../src/app/assists/guess-asked.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { View } from '../../../src/marks/view.ts';

const at = (id: string, xPx: number, yPx: number) =>
  ({ id, xPx, yPx, sigmaPx: 1, placedBy: 'hand' }) as const;
const face: Mark = { kind: 'chamber-face', ...at('face', 0, 10) };
const pin: Mark = { kind: 'clevis-pin', ...at('pin', 200, 10) };
const shaft: Mark = { kind: 'camshaft-end', ...at('shaft', 220, 160) };
const view = (state: View['state'], captureId: string, marks: readonly Mark[]): View => ({
  state,
  captureId,
  frame: null,
  marks,
});
const released = view('released', 'one', [face, pin, shaft]);
const sight = {
  found: [{ of: 'clevis-pin', placePx: [260, 12], sigmaPx: 0.3 }],
  missed: [{ of: 'camshaft-end', because: 'unlike' }],
} as const;

test('what the released picture has and this one has not is sought; of one clip, nothing', () => {
  const asked = guessAsked(view('applied', 'two', []), released);
  expect(asked?.question).toEqual({
    facePx: [0, 10],
    pin: { placePx: [200, 10], sigmaPx: 1 },
    camshaft: { placePx: [220, 160], sigmaPx: 1 },
  });
  expect(asked?.wanted).toEqual([pin, shaft]);
  expect(guessAsked(view('applied', 'two', [pin]), released)?.wanted).toEqual([shaft]);
  expect(guessAsked(view('applied', 'two', [pin, shaft]), released)).toBeNull();
  expect(guessAsked(view('applied', 'one', []), released)).toBeNull();
  expect(guessAsked(view('applied', 'two', []), view('released', 'one', [pin]))).toBeNull();
});

test('what is found names the mark it was found from; the rest is for the hand', () => {
  const asked = guessAsked(view('applied', 'two', []), released);
  if (!asked) throw new Error('nothing asked');
  const guess = { ...asked, search: { is: 'found', sight } } as const;
  const [end, ...others] = guessedEnds(guess);
  if (!end) throw new Error('nothing offered');
  expect(others).toEqual([]);
  expect(marksFound(end, end.search.marks, () => 'new')).toEqual([
    {
      kind: 'clevis-pin',
      id: 'new',
      xPx: 260,
      yPx: 12,
      sigmaPx: 0.3,
      placedBy: 'assist',
      followedFrom: 'pin',
    },
  ]);
  expect(notGuessed(guess)).toEqual(['camshaft-end']);
  expect(notGuessed({ ...guess, search: { is: 'failed' } })).toEqual(['clevis-pin', 'camshaft-end']);
  expect(notGuessed({ ...guess, search: { is: 'under-way' } })).toEqual([]);
});

test('a mark that was set meanwhile is not offered', () => {
  const asked = guessAsked(view('applied', 'two', [pin]), released);
  if (!asked) throw new Error('nothing asked');
  expect(guessedEnds({ ...asked, search: { is: 'found', sight } })).toEqual([]);
});
