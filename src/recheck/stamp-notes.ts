/** What an attested time tells of the device's own: the manifest was there when it was stamped, so it was made before. */
import { CLOCK_SLACK_MS } from '../record/time-notes.ts';
import type { TimeStamp } from './time-stamp.ts';

export type StampTimeNote = { readonly code: 'times/made-after-stamp'; readonly byMs: number };

export function stampTimeNotes(madeAt: string | null, stamp: TimeStamp | null): readonly StampTimeNote[] {
  if (madeAt === null || stamp === null) return [];
  const byMs = Date.parse(madeAt) - Date.parse(stamp.time) - (stamp.accuracyMs ?? 0);
  return byMs > CLOCK_SLACK_MS ? [{ code: 'times/made-after-stamp', byMs }] : [];
}
