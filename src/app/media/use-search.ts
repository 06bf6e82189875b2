import { useEffect } from 'react';
import type { createSearches } from './searches.ts';

type Asked<Ended> = {
  /** Names all that is asked: another key ends what is under way. */
  readonly key: string;
  readonly seek: (signal: AbortSignal) => Promise<Ended>;
};

/** Begins what is asked, once for each key; null: nothing, or not yet. */
export function useSearch<Ended extends { readonly is: string }>(
  searches: Pick<ReturnType<typeof createSearches<Ended>>, 'begin'>,
  asked: Asked<Ended> | null | undefined,
): void {
  const key = asked?.key ?? null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key names the question; a new function that asks it is no reason to begin anew.
  useEffect(() => (asked ? searches.begin(asked.key, asked.seek) : undefined), [searches, key]);
}
