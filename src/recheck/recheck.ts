/** What a recheck answers. */
import type { RecordedResult } from '../evidence/results.ts';
import type { InspectionRecord } from '../record/record.ts';
import type { TimeNote } from '../record/time-notes.ts';
import type { Difference } from './difference.ts';
import type { StoredFile } from './read-container.ts';
import type { StampTimeNote } from './stamp-notes.ts';
import type { TimeStamp } from './time-stamp.ts';

export const CHECKS = [
  'container',
  'files',
  'hashes',
  'signature',
  'timeStamp',
  'record',
  'history',
  'captures',
  'ruleSets',
  'results',
] as const;
export type CheckName = (typeof CHECKS)[number];

export type Check = {
  /** Not checked: what it needs could not be read. None: there is no time stamp, and there need not be one. */
  readonly answer: 'yes' | 'no' | 'not checked' | 'none';
  readonly differences: readonly Difference[];
};

export type Recheck = {
  /** Every check was made and answered with yes; only the time stamp may be left out. */
  readonly holds: boolean;
  readonly checks: Readonly<Record<CheckName, Check>>;
  readonly signature: {
    readonly state: 'good' | 'bad' | 'none';
    /** Of the key in the package, whoever's it is. */
    readonly fingerprint: string | null;
  };
  /** Null: there is none, or it cannot be verified. */
  readonly timeStamp: TimeStamp | null;
  /** Names the package: its manifest names every byte. */
  readonly manifestSha256: string | null;
  /** As the package says. */
  readonly madeAt: string | null;
  readonly engine: string | null;
  readonly record: InspectionRecord | null;
  /** Times that contradict each other. They change no answer. */
  readonly times: readonly (TimeNote | StampTimeNote)[];
  readonly recorded: readonly RecordedResult[] | null;
  /** Where each file lies in the package. */
  readonly stored: readonly StoredFile[];
};

export const NOT_CHECKED: Check = { answer: 'not checked', differences: [] };

export function checkOf(differences: readonly Difference[]): Check {
  return { answer: differences.length === 0 ? 'yes' : 'no', differences };
}
