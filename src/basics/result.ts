/** The world's success or failure. A failure carries a code and the numbers that explain it; the sentence is made in app/words. */
export type Result<T, F extends { readonly code: string }> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: F };

export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function fail<const F extends { readonly code: string }>(
  failure: F,
): { readonly ok: false; readonly failure: F } {
  return { ok: false, failure };
}

/** For our own mistakes only: throws, and is caught at the screen's error boundary or the command's edge. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Broken assumption: ${message}`);
}
