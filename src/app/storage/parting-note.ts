/**
 * What is not yet in the database in the moment the page goes away. The database answers too late then; local storage does
 * not. At the next start it goes into the database, unless that is newer.
 */
import { z } from 'zod';
import type { KeptRecord } from './database.ts';

const noteSchema = z.object({
  /** The records themselves pass their own door when they are opened. */
  unwritten: z.array(z.custom<KeptRecord>(isKept)).readonly(),
  /** Which record is open; null where the list is. */
  openId: z.string().nullable(),
});

export type PartingNote = z.infer<typeof noteSchema>;

const KEY = 'strokewitness-parting-note';

export function leaveNote(note: PartingNote): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(note));
  } catch {
    // No room or not allowed: the database has all but the last moment.
    dropNote();
  }
}

/** The last given state of each record: several noted in one millisecond could not be told apart by their time. */
export function newestOfEach<T extends { readonly keptId: string }>(states: readonly T[]): readonly T[] {
  return [...new Map(states.map((state) => [state.keptId, state])).values()];
}

export function readNote(): PartingNote | null {
  try {
    return noteSchema.safeParse(JSON.parse(localStorage.getItem(KEY) ?? 'null')).data ?? null;
  } catch {
    return null;
  }
}

export function dropNote(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    return;
  }
}

function isKept(data: unknown): boolean {
  return z.object({ id: z.string(), savedAt: z.string(), record: z.object({}) }).safeParse(data).success;
}
