/** An abort is neither failure nor error; anything else is a mistake of ours. */
export function reportUnlessAbort(thrown: unknown): void {
  if (thrown instanceof DOMException && thrown.name === 'AbortError') return;
  reportError(thrown);
}
