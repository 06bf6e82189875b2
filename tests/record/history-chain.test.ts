import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { canonicalJson } from '../../src/basics/canonical-json.ts';
import { historyFaults, sealHistory } from '../../src/record/history-chain.ts';
import { noteHistory } from '../../src/record/note-history.ts';
import { openRecord } from '../../src/record/open-record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { exampleRecord } from './example-record.ts';

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');
const sealing = { at: '2026-05-12T17:00:00.000Z', by: 'R. Ames' };
const worked = ['axles', 'marks', 'chamber'].reduce(
  (record, place) => noteHistory(record, { at: '2026-05-12T16:00:00.000Z', act: 'changed', place }),
  exampleRecord(),
);
const sealed = sealHistory(worked, sealing, sha256);
const count = sealed.history.length;

test('a sealed record follows, also after it was saved and opened', () => {
  expect(historyFaults(sealed, sha256)).toEqual([]);
  const text = recordText(sealed);
  expect(historyFaults(JSON.parse(text), sha256)).toEqual([]);
  expect(openRecord(text).ok).toBe(true);
});

test('the hashes are those of the formula', () => {
  const [first, second] = sealed.history;
  const { chainSha256: chain1, ...entry1 } = first ?? { chainSha256: '' };
  const { chainSha256: chain2, ...entry2 } = second ?? { chainSha256: '' };
  expect(chain1).toBe(sha256(canonicalJson(entry1)));
  expect(chain2).toBe(sha256(chain1 + canonicalJson(entry2)));
  const { history: _history, ...state } = worked;
  expect(sealed.history.at(-1)).toMatchObject({ act: 'packaged', stateSha256: sha256(canonicalJson(state)) });
});

test.each(sealed.history.map((_entry, i) => i).slice(0, -1))(
  'entry %i cut: the next one does not follow',
  (i) => {
    const history = sealed.history.filter((_entry, j) => j !== i);
    expect(historyFaults({ ...sealed, history }, sha256)).toEqual([
      { code: 'history/does-not-follow', entry: i },
    ]);
  },
);

test.each(sealed.history.map((_entry, i) => i))('entry %i altered: it does not follow', (i) => {
  const history = sealed.history.map((entry, j) => (j === i ? { ...entry, by: 'Somebody' } : entry));
  expect(historyFaults({ ...sealed, history }, sha256)).toEqual([
    { code: 'history/does-not-follow', entry: i },
  ]);
});

test('the end cut, or work done since the sealing', () => {
  const history = sealed.history.slice(0, -1);
  const last = history.length - 1;
  expect(historyFaults({ ...sealed, history }, sha256)).toEqual([
    { code: 'history/not-sealed', entry: last },
  ]);
  const later = noteHistory(sealed, { at: '2026-05-13T08:00:00.000Z', act: 'changed', place: 'marks' });
  expect(historyFaults(later, sha256)).toEqual([
    { code: 'history/entry-open', entry: count },
    { code: 'history/not-sealed', entry: count },
  ]);
});

test('the record changed behind its back', () => {
  const changed = { ...sealed, createdAt: '2020-01-01T00:00:00.000Z' };
  expect(historyFaults(changed, sha256)).toEqual([{ code: 'history/state-differs', entry: count - 1 }]);
});

test('sealed a second time, the first seal stays as it was', () => {
  const later = noteHistory(sealed, { at: '2026-05-13T08:00:00.000Z', act: 'changed', place: 'marks' });
  const again = sealHistory(later, { ...sealing, at: '2026-05-13T09:00:00.000Z' }, sha256);
  expect(historyFaults(again, sha256)).toEqual([]);
  expect(again.history.slice(0, count)).toEqual(sealed.history);
});

test.each([[null], [[]], [{}], [{ history: 'none' }], [{ history: [] }], [{ history: [1, null] }]])(
  'without a history, nothing follows: %j',
  (data) => expect(historyFaults(data, sha256)).toEqual([{ code: 'history/none' }]),
);
