/** Keeps the view in step with the viewer's size and with the picture's. */
import { type RefObject, useEffect, useLayoutEffect } from 'react';
import { fittedView, resized, type ScreenSize } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

export function useView(
  store: ViewerStore,
  stage: RefObject<HTMLElement | null>,
  picture: ImageBitmap | null,
): void {
  useLayoutEffect(() => {
    const screen = stage.current && sizeOf(stage.current);
    if (!picture || !screen) return;
    const { view } = store.getState();
    const sameSize = view?.frame.widthPx === picture.width && view.frame.heightPx === picture.height;
    if (!sameSize) store.setState({ view: firstView(picture, screen) });
  }, [store, stage, picture]);

  useEffect(() => {
    const element = stage.current;
    if (!element) return;
    const observer = new ResizeObserver(() => {
      const screen = sizeOf(element);
      const { view } = store.getState();
      if (screen && view) store.setState({ view: resized(view, screen) });
      else if (screen && picture) store.setState({ view: firstView(picture, screen) });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [store, stage, picture]);
}

function firstView(picture: ImageBitmap, screen: ScreenSize) {
  return fittedView({ widthPx: picture.width, heightPx: picture.height }, screen);
}

function sizeOf(element: HTMLElement): ScreenSize | null {
  const { width, height } = element.getBoundingClientRect();
  return width > 0 && height > 0 ? { widthCss: width, heightCss: height } : null;
}
