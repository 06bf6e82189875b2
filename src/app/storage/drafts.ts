/**
 * What stands in a form that is not done yet. It is no part of the record until then, and is kept beside it: a screen that is left,
 * a page loaded again or another tab that takes the inspection over find it as it was. Local storage: all tabs see it at once.
 */
import type { z } from 'zod';

const keysOf = (keptId: string) => `strokewitness-draft ${keptId} `;

export function readDraft<T>(keptId: string, form: string, schema: z.ZodType<T>): T | null {
  try {
    const text = localStorage.getItem(keysOf(keptId) + form);
    return text === null ? null : (schema.safeParse(JSON.parse(text)).data ?? null);
  } catch {
    return null;
  }
}

export function hasDraft(keptId: string, form: string): boolean {
  try {
    return localStorage.getItem(keysOf(keptId) + form) !== null;
  } catch {
    return false;
  }
}

/** Null: the form was done or given up. */
export function writeDraft(keptId: string, form: string, draft: unknown): void {
  try {
    if (draft === null) localStorage.removeItem(keysOf(keptId) + form);
    else localStorage.setItem(keysOf(keptId) + form, JSON.stringify(draft));
  } catch {
    // No room or not allowed: the draft then lasts as long as its form is shown.
    return;
  }
}

/** With the inspection they belong to. */
export function dropDrafts(keptId: string): void {
  try {
    for (const key of Object.keys(localStorage))
      if (key.startsWith(keysOf(keptId))) localStorage.removeItem(key);
  } catch {
    return;
  }
}
