/** Worked by hand: an inspection begun at noon UTC, its times moved one at a time. */
import { expect, test } from 'vitest';
import type { Capture } from '../../src/captures/capture.ts';
import { stampTimeNotes } from '../../src/recheck/stamp-notes.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { type TimeNote, timeNotes } from '../../src/record/time-notes.ts';
import { exampleRecord } from './example-record.ts';

const HOUR_MS = 3_600_000;
const BEGUN = Date.UTC(2026, 4, 12, 12);
const at = (hours: number) => new Date(BEGUN + hours * HOUR_MS).toISOString();
/** As a camera in zone -06:00 writes it, with its zone or without. */
function byCamera(hours: number, zone = '-06:00'): string {
  const [day = '', time = ''] = at(hours - 6).split(/[T.]/);
  return `${day.replaceAll('-', ':')} ${time}${zone}`;
}

type Moved = {
  readonly captures?: Readonly<Record<string, Partial<Capture>>>;
  readonly repairs?: readonly number[];
  readonly history?: readonly number[];
};

/** All is taken half an hour after the beginning, written then, and added half an hour later. */
function sound({ captures = {}, repairs = [-1], history = [0, 2] }: Moved = {}): InspectionRecord {
  const record = exampleRecord();
  const line = record.history[0];
  if (!line) throw new Error('the example has no history');
  return {
    ...record,
    createdAt: at(0),
    captures: record.captures.map((capture) => ({
      ...capture,
      takenAt: byCamera(0.5),
      fileWrittenAt: at(0.5),
      addedAt: at(1),
      clip: capture.clip && { ...capture.clip, headerTime: at(0.5) },
      ...captures[capture.id],
    })),
    wheelEnds: record.wheelEnds.map((wheelEnd) => ({
      ...wheelEnd,
      repairs: wheelEnd.repairs.map((repair, i) => ({ ...repair, at: at(repairs[i] ?? 0) })),
    })),
    history: history.map((hours) => ({ ...line, at: at(hours) })),
  };
}

const codes = (moved?: Moved) => timeNotes(sound(moved)).map(({ code }) => code);

test('times that fit each other are not spoken of', () => expect(timeNotes(sound())).toEqual([]));

test('a record that keeps none of the new times says nothing about them', () => {
  const none = { takenAt: null, fileWrittenAt: null, addedAt: null };
  expect(
    codes({ captures: Object.fromEntries(exampleRecord().captures.map(({ id }) => [id, none])) }),
  ).toEqual([]);
});

test.each<[string, Moved, string]>([
  [
    'taken an hour after it was here',
    { captures: { c1: { takenAt: byCamera(2), fileWrittenAt: null } } },
    'times/taken-after-added',
  ],
  [
    'the same without the time of adding',
    { captures: { c1: { takenAt: byCamera(3), addedAt: null, fileWrittenAt: null } } },
    'times/taken-after-added',
  ],
  [
    'taken two days before',
    {
      captures: {
        c1: { takenAt: byCamera(-48), fileWrittenAt: at(-48) },
        c2: { takenAt: byCamera(-48), fileWrittenAt: at(-48) },
        c3: { takenAt: byCamera(-48), fileWrittenAt: at(-48) },
      },
    },
    'times/taken-before-inspection',
  ],
  [
    'a file older than its picture',
    { captures: { c1: { fileWrittenAt: at(-1) } } },
    'times/file-older-than-picture',
  ],
  ['a file written again', { captures: { c1: { fileWrittenAt: at(0.9) } } }, 'times/file-written-later'],
  [
    'a file from the future',
    { captures: { c1: { takenAt: null, fileWrittenAt: at(3) } } },
    'times/file-after-added',
  ],
])('%s is said', (_what, moved, code) => expect(codes(moved)).toEqual([code]));

test('how many files and by how much at least', () => {
  const later = (hours: number) => ({ fileWrittenAt: at(hours) });
  expect(timeNotes(sound({ captures: { c1: later(0.8), c2: later(0.9) } }))).toEqual([
    {
      code: 'times/file-written-later',
      fileNames: ['invented-1.jpg', 'invented-2.jpg'],
      byMs: 0.4 * HOUR_MS,
    },
  ] satisfies TimeNote[]);
});

test('without a zone, only what no zone explains is said', () => {
  const without = (hours: number) => ({
    captures: { c1: { takenAt: byCamera(hours, ''), fileWrittenAt: null } },
  });
  // Local time -06:00 read as any zone from -12 to +14 is from 20 h earlier to 6 h later in UTC.
  expect(codes(without(20))).toEqual([]);
  expect(codes(without(22))).toContain('times/taken-after-added');
  expect(codes(without(-29))).not.toContain('times/taken-before-inspection');
  expect(codes(without(-31))).toContain('times/taken-before-inspection');
});

test('a clip’s own length is no contradiction, another header time is one', () => {
  const [clip] = exampleRecord().captures.filter(({ kind }) => kind === 'clip');
  if (!clip?.clip) throw new Error('the example has no clip');
  const header = (hours: number) => ({
    captures: {
      [clip.id]: { clip: { ...clip.clip, headerTime: at(hours) } as NonNullable<Capture['clip']> },
    },
  });
  expect(codes(header(0.5 + 10 / 3600))).toEqual([]);
  expect(codes(header(0.9))).toEqual(['times/header-differs']);
});

test('the pictures of one measurement belong to one visit, in any order', () => {
  const taken = (hours: number) => ({ takenAt: byCamera(hours), fileWrittenAt: at(hours) });
  expect(codes({ captures: { c1: taken(0.6), c2: taken(0.5) } })).toEqual([]);
  expect(timeNotes(sound({ captures: { c4: taken(-14) } }))).toEqual([
    {
      code: 'times/pictures-far-apart',
      position: { axle: 1, side: 'right' },
      purpose: 'as-found',
      byMs: 14.5 * HOUR_MS,
    },
  ]);
});

test('after repair comes after as found, and not a day before the repair was written down', () => {
  const repaired = (hours: number) => ({ takenAt: byCamera(hours), fileWrittenAt: null });
  expect(codes({ captures: { c11: repaired(0.2), c12: repaired(0.2) } })).toEqual([
    'times/repaired-before-found',
  ]);
  expect(codes({ repairs: [20] })).toEqual([]);
  expect(codes({ repairs: [26] })).toEqual(['times/measured-before-repair']);
});

test('a clock that was set back shows in the history, and one that is ahead in a time stamp', () => {
  expect(timeNotes(sound({ history: [0, 2, 1.5] }))).toEqual([
    { code: 'times/history-backwards', entry: 2, byMs: 0.5 * HOUR_MS },
  ]);
  const stamp = {
    time: at(0),
    accuracyMs: 1000,
    authority: '',
    certificateSha256: '',
    trust: 'not checked',
  } as const;
  expect(stampTimeNotes(at(0.1), stamp)).toEqual([]);
  expect(stampTimeNotes(at(1), stamp)).toEqual([{ code: 'times/made-after-stamp', byMs: HOUR_MS - 1000 }]);
  expect(stampTimeNotes(at(1), null)).toEqual([]);
});
