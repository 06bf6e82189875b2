/**
 * Times of an inspection that contradict each other: what cameras, files and this device say, held against each other.
 * A note changes no finding: clocks are set wrong more often than a picture is.
 *
 * Model    each time is a span of instants (captures/time-span.ts): one where its zone is known, else 26 hours wide. 'Before'
 *          and 'after' are said only where every instant of one span lies before, or after, every instant of the other.
 * Slack    two clocks that were set by hand agree within ten minutes; what is done in the yard is written down by the next
 *          day; the pictures of one measurement are of one visit (common practice, no source).
 * Not      released after applied: pictures may be taken in any order.
 */
import type { Capture } from '../captures/capture.ts';
import { type TimeSpan, timeSpan } from '../captures/time-span.ts';
import type { MeasurementInput, Purpose } from './measurement-input.ts';
import type { InspectionRecord } from './record.ts';
import type { Position, WheelEnd } from './wheel-end.ts';

export type FileTimeCode =
  /** By its camera, a picture was taken after it was already here. */
  | 'times/taken-after-added'
  /** Taken more than a day before the inspection was begun. */
  | 'times/taken-before-inspection'
  /** The file was last written before its picture was taken. */
  | 'times/file-older-than-picture'
  /** The file was written again after its picture was taken: copied, or changed. */
  | 'times/file-written-later'
  /** By its file system, the file was written after it was already here. */
  | 'times/file-after-added'
  /** A clip's header gives another time than its camera wrote beside it. */
  | 'times/header-differs';

export type TimeNote =
  | {
      readonly code: FileTimeCode;
      readonly fileNames: readonly string[];
      /** By how much at least, of the file where it is most. */
      readonly byMs: number;
    }
  | {
      readonly code:
        | 'times/pictures-far-apart'
        /** A picture after repair was taken before one as found. */
        | 'times/repaired-before-found'
        /** Taken more than a day before the first repair was written down. */
        | 'times/measured-before-repair';
      readonly position: Position;
      readonly purpose: Purpose;
      readonly byMs: number;
    }
  /** A line of the history (counted from 0) is earlier than the one before it: the device's clock was set back. */
  | { readonly code: 'times/history-backwards'; readonly entry: number; readonly byMs: number };

const MINUTE_MS = 60_000;
export const CLOCK_SLACK_MS = 10 * MINUTE_MS;
const NEXT_DAY_MS = 24 * 60 * MINUTE_MS;
const ONE_VISIT_MS = 12 * 60 * MINUTE_MS;

export function timeNotes(record: InspectionRecord): readonly TimeNote[] {
  return [
    ...fileNotes(record),
    ...record.wheelEnds.flatMap((wheelEnd) => wheelEndNotes(wheelEnd, record.captures)),
    ...historyNotes(record),
  ];
}

function fileNotes(record: InspectionRecord): TimeNote[] {
  const found = new Map<FileTimeCode, { fileNames: string[]; byMs: number }>();
  for (const capture of record.captures)
    for (const [code, byMs] of faultsOf(capture, record)) {
      const { fileNames, byMs: most } = found.get(code) ?? { fileNames: [], byMs: 0 };
      found.set(code, { fileNames: [...fileNames, capture.fileName], byMs: Math.max(most, byMs) });
    }
  return [...found].map(([code, note]) => ({ code, ...note }));
}

function faultsOf(capture: Capture, { createdAt, history }: InspectionRecord): [FileTimeCode, number][] {
  const taken = spanOf(capture.takenAt);
  const header = spanOf(capture.clip?.headerTime ?? null);
  const written = spanOf(capture.fileWrittenAt);
  // A record from before the time of adding was kept tells at least when it was last worked on.
  const here = spanOf(capture.addedAt ?? history.at(-1)?.at ?? null);
  const begun = spanOf(createdAt);
  const lengthMs = (capture.clip?.durationS ?? 0) * 1000;
  const rows: [FileTimeCode, number, number][] = [
    ['times/taken-after-added', after(taken ?? header, here), CLOCK_SLACK_MS],
    ['times/taken-before-inspection', after(begun, taken ?? header), NEXT_DAY_MS],
    ['times/file-older-than-picture', after(taken, written), CLOCK_SLACK_MS],
    ['times/file-written-later', after(written, taken) - lengthMs, CLOCK_SLACK_MS],
    ['times/file-after-added', after(written, here), CLOCK_SLACK_MS],
    ['times/header-differs', Math.max(after(taken, header), after(header, taken) - lengthMs), CLOCK_SLACK_MS],
  ];
  return rows.flatMap(([code, byMs, slackMs]) => (byMs > slackMs ? [[code, byMs]] : []));
}

function wheelEndNotes(
  { position, measurements, repairs }: WheelEnd,
  captures: readonly Capture[],
): TimeNote[] {
  const takenOf = ({ views }: MeasurementInput) =>
    captures
      .filter(({ id }) => views.some(({ captureId }) => captureId === id))
      .map(({ takenAt }) => spanOf(takenAt));
  const takenFor = (wanted: Purpose) =>
    measurements.filter(({ purpose }) => purpose === wanted).flatMap(takenOf);
  const repaired = takenFor('after-repair');
  const written = repairs.map(({ at }) => spanOf(at)).sort((a, b) => (a?.latestMs ?? 0) - (b?.latestMs ?? 0));
  const note = (
    code: Extract<TimeNote, { position: Position }>['code'],
    purpose: Purpose,
    byMs: number,
    slackMs: number,
  ) => (byMs > slackMs ? [{ code, position, purpose, byMs }] : []);
  return [
    ...measurements.flatMap((measurement) =>
      note(
        'times/pictures-far-apart',
        measurement.purpose,
        mostAfter(takenOf(measurement), takenOf(measurement)),
        ONE_VISIT_MS,
      ),
    ),
    ...note(
      'times/repaired-before-found',
      'after-repair',
      mostAfter(takenFor('as-found'), repaired),
      CLOCK_SLACK_MS,
    ),
    ...note(
      'times/measured-before-repair',
      'after-repair',
      mostAfter(written.slice(0, 1), repaired),
      NEXT_DAY_MS,
    ),
  ];
}

function historyNotes({ history }: InspectionRecord): TimeNote[] {
  return history.flatMap(({ at }, entry): TimeNote[] => {
    const byMs = after(spanOf(history[entry - 1]?.at ?? null), spanOf(at));
    return byMs > CLOCK_SLACK_MS ? [{ code: 'times/history-backwards', entry, byMs }] : [];
  });
}

/** By how much `later` is certainly after `earlier`; negative where it need not be, or where one is not known. */
function after(later: TimeSpan | null, earlier: TimeSpan | null): number {
  return later && earlier ? later.earliestMs - earlier.latestMs : Number.NEGATIVE_INFINITY;
}

function mostAfter(later: readonly (TimeSpan | null)[], earlier: readonly (TimeSpan | null)[]): number {
  return Math.max(...later.flatMap((one) => earlier.map((other) => after(one, other))));
}

function spanOf(written: string | null): TimeSpan | null {
  return written === null ? null : timeSpan(written);
}
