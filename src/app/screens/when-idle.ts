/** While nothing else is to be done. Answers how to call it off. */
export function whenIdle(then: () => void): () => void {
  // Safari has no idle time to ask for.
  if (!('requestIdleCallback' in window)) {
    const timer = setTimeout(then, 500);
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback(then, { timeout: 2000 });
  return () => cancelIdleCallback(asked);
}
