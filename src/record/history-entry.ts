/**
 * One line of the record's history: who did what, when. Lines are only ever added.
 * The hashes are null until the record is sealed for handing over (history-chain.ts).
 */
import { z } from 'zod';
import { at, line, place } from './parts.ts';

const HISTORY_ACTS = ['started', 'changed', 'undone', 'redone', 'packaged'] as const;
export type HistoryAct = (typeof HISTORY_ACTS)[number];

const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .nullable();

export const historyEntrySchema = z
  .strictObject({
    at,
    by: line,
    act: z.enum(HISTORY_ACTS),
    /** What was changed, as in '2-left/as-found/marks'; empty for the whole record. */
    place,
    /** Of the record without its history as it was then: where the record was sealed. */
    stateSha256: sha256,
    /** Of this line and all before it. */
    chainSha256: sha256,
  })
  .readonly();

export type HistoryEntry = z.infer<typeof historyEntrySchema>;
