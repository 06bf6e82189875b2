/**
 * The browser's history has one entry for each screen of the way, so that its back button goes one screen up; and each screen is
 * seen from its head, or, on the way back, from where it was left.
 */
import { useEffect, useLayoutEffect, useRef } from 'react';
import { useLatest } from '../viewer/use-latest.ts';

/** How many screens lie under an entry; undefined for one that a link inside the page made. */
const depthOfEntry = (): number | undefined => history.state?.depth;
const entry = (depth: number) => ({ depth });

export function useWay(way: readonly string[], goUp: () => void): void {
  const depth = way.length;
  const latest = useLatest({ depth, goUp });
  /** Steps back that were asked for here are under way. */
  const going = useRef(false);

  useEffect(() => {
    if (depthOfEntry() === undefined) history.replaceState(entry(0), '');
    history.scrollRestoration = 'manual';
    const stepped = () => {
      const { depth: shown, goUp: up } = latest.current;
      const at = depthOfEntry();
      if (at === undefined) history.replaceState(entry(shown), '');
      else if (going.current || at > shown) going.current = toDepth(shown);
      else for (let depthNow = shown; depthNow > at; depthNow--) up();
    };
    addEventListener('popstate', stepped);
    return () => removeEventListener('popstate', stepped);
  }, [latest]);

  useEffect(() => {
    if (!going.current) going.current = toDepth(depth);
  }, [depth]);

  useScrollOf(way);
}

/** True where the browser has to step back, which it does later. */
function toDepth(depth: number): boolean {
  const at = depthOfEntry() ?? 0;
  for (let next = at + 1; next <= depth; next++) history.pushState(entry(next), '');
  if (at > depth) history.go(depth - at);
  return at > depth;
}

function useScrollOf(way: readonly string[]): void {
  const name = way.at(-1) ?? '';
  /** By name of the screen. */
  const left = useRef(new Map<string, number>());
  const seen = useRef({ name, depth: way.length });
  useEffect(() => {
    const note = () => left.current.set(seen.current.name, scrollY);
    addEventListener('scroll', note, { passive: true });
    return () => removeEventListener('scroll', note);
  }, []);
  useLayoutEffect(() => {
    const before = seen.current;
    seen.current = { name, depth: way.length };
    if (before.name === name) return;
    scrollTo(0, way.length < before.depth ? (left.current.get(name) ?? 0) : 0);
  }, [name, way.length]);
}
