import { expect, test } from 'vitest';
import { noteHistory } from '../../src/record/note-history.ts';
import { exampleRecord } from './example-record.ts';

const AT = '2026-05-12T12:00:00.000Z';
const LATER = '2026-05-12T12:01:00.000Z';
const HASH = 'a'.repeat(64);
const marks = (at: string) => ({ at, act: 'changed', place: '1-left/as-found/marks' }) as const;

test('a step like the one before moves its time, another adds a line', () => {
  const record = exampleRecord();
  const before = record.history.length;
  const once = noteHistory(record, marks(AT));
  const again = noteHistory(once, marks(LATER));
  expect(again.history).toHaveLength(before + 1);
  expect(again.history.at(-1)).toMatchObject({ at: LATER, by: record.inspector.name });
  expect(noteHistory(again, { ...marks(LATER), place: 'conditions' }).history).toHaveLength(before + 2);
});

test('a line that is sealed is never touched', () => {
  const record = noteHistory(exampleRecord(), marks(AT));
  const sealed = { ...record, history: record.history.map((line) => ({ ...line, chainSha256: HASH })) };
  const after = noteHistory(sealed, marks(LATER));
  expect(after.history.slice(0, -1)).toEqual(sealed.history);
  expect(after.history).toHaveLength(sealed.history.length + 1);
});

test('another person’s work is a line of its own', () => {
  const record = noteHistory(exampleRecord(), marks(AT));
  const other = { ...record, inspector: { ...record.inspector, name: 'Another' } };
  expect(noteHistory(other, marks(LATER)).history).toHaveLength(record.history.length + 1);
});
