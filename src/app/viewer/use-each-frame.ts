/** Paints after each render, and at most once per animation frame when the viewer's state changed. */
import { useEffect, useLayoutEffect, useRef } from 'react';
import type { ViewerState, ViewerStore } from './viewer-store.ts';

export function useEachFrame(store: ViewerStore, paint: (state: ViewerState) => void): void {
  const latest = useRef(paint);
  useLayoutEffect(() => {
    latest.current = paint;
    paint(store.getState());
  });
  useEffect(() => {
    let request = 0;
    const unsubscribe = store.subscribe(() => {
      request ||= requestAnimationFrame(() => {
        request = 0;
        latest.current(store.getState());
      });
    });
    return () => {
      unsubscribe();
      cancelAnimationFrame(request);
    };
  }, [store]);
}
