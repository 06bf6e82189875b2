/**
 * The newest state, written in the moment the page goes away. The database answers too late then; local storage does not.
 * At the next start it goes into the database, unless that is newer.
 */
import type { KeptRecord } from './database.ts';

const KEY = 'strokewitness-parting-note';

export function leaveNote(kept: KeptRecord): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // No room or not allowed: the database has all but the last moment.
    dropNote();
  }
}

export function readNote(): KeptRecord | null {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? 'null');
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
