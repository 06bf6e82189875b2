/** What a recheck found to be otherwise than the package says, and where. A path is cut and may hold anything: it is a stranger's. */
import type { HistoryFault } from '../record/history-chain.ts';
import type { RecordFailure } from '../record/record-failure.ts';
import type { TimeStampFault } from './time-stamp.ts';

export type ContainerFault =
  | { readonly code: 'container/size'; readonly sizeBytes: number; readonly limitBytes: number }
  /** The end record is not as it must be: the file was cut, added to, or packed by another program. */
  | { readonly code: 'container/end'; readonly atByte: number }
  | { readonly code: 'container/too-many-files'; readonly files: number; readonly limit: number }
  /** A header is not as it must be, from this byte of the package on. */
  | { readonly code: 'container/header'; readonly path: string; readonly atByte: number }
  | { readonly code: 'container/strange-name'; readonly path: string; readonly atByte: number }
  | { readonly code: 'container/name-twice'; readonly path: string; readonly atByte: number }
  /** The bytes of a file do not fit the checksum that its header gives. */
  | { readonly code: 'container/checksum'; readonly path: string };

/** Why a JSON file of the package cannot be read. */
export type NotReadable = {
  readonly path: string;
  readonly problem:
    | 'missing'
    | 'too-large'
    | 'too-deep'
    | 'not-text'
    | 'not-json'
    | 'other-format'
    | 'newer-version'
    | 'invalid';
  /** The place in the document, as in `files[3].sha256`; empty for the whole. */
  readonly place: string;
};

export type FilesFault =
  | ({ readonly code: 'files/not-readable' } & NotReadable)
  | { readonly code: 'files/missing' | 'files/not-listed' | 'files/out-of-order'; readonly path: string }
  | { readonly code: 'files/size'; readonly path: string; readonly listed: number; readonly found: number };

export type HashFault = {
  readonly code: 'hashes/differs';
  readonly path: string;
  readonly listed: string;
  readonly found: string;
};

export type SignatureFault =
  | { readonly code: 'signature/none' }
  | ({ readonly code: 'signature/not-readable' } & NotReadable)
  | { readonly code: 'signature/does-not-fit' }
  /** It fits, but it is not of the key that was asked for. */
  | { readonly code: 'signature/other-key'; readonly asked: string; readonly found: string };

export type CaptureFault =
  | { readonly code: 'captures/missing'; readonly captureId: string; readonly fileName: string }
  | { readonly code: 'captures/not-in-record'; readonly path: string }
  /** The photo's own EXIF says otherwise than the record says it does. */
  | {
      readonly code: 'captures/facts-differ';
      readonly captureId: string;
      readonly fileName: string;
      readonly fact: 'takenAt' | 'focal35Mm';
      readonly recorded: string | number | null;
      readonly found: string | number | null;
    };

export type RuleSetFault = {
  readonly code: 'rule-sets/not-held' | 'rule-sets/differs' | 'rule-sets/not-listed';
  readonly id: string;
};

export type ResultFault =
  | ({ readonly code: 'results/not-readable' } & NotReadable)
  | { readonly code: 'results/too-many'; readonly measurements: number; readonly limit: number }
  | {
      readonly code: 'results/missing' | 'results/not-in-record';
      readonly wheelEnd: string;
      readonly measurement: string;
    }
  | {
      readonly code: 'results/differ';
      readonly wheelEnd: string;
      readonly measurement: string;
      readonly quantity: string;
      readonly recorded: number | string | null;
      readonly recomputed: number | string | null;
    };

export type Difference =
  | ContainerFault
  | FilesFault
  | HashFault
  | SignatureFault
  | TimeStampFault
  | {
      readonly code: 'record/does-not-open';
      readonly failure: RecordFailure | { readonly code: 'utf8/broken' };
    }
  | HistoryFault
  | CaptureFault
  | RuleSetFault
  | ResultFault;
