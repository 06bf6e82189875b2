import { useState } from 'react';
import type { z } from 'zod';
import { hasDraft, readDraft, writeDraft } from '../storage/drafts.ts';
import { work } from '../stores.ts';

const keptId = () => work.getState().open?.keptId ?? '';

export const isDrafted = (form: string): boolean => hasDraft(keptId(), form);

/** A form of the open inspection, by a name of its own; null while it is closed. */
export function useDraft<T>(
  form: string,
  schema: z.ZodType<T>,
): readonly [T | null, (draft: T | null) => void] {
  const [id] = useState(keptId);
  const [draft, setDraft] = useState(() => readDraft(id, form, schema));
  const keep = (next: T | null) => {
    setDraft(next);
    writeDraft(id, form, next);
  };
  return [draft, keep];
}
