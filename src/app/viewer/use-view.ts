/** Keeps the view in step with the viewer's size and with the picture's. */
import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { resized, type ScreenSize, viewOfPoints } from './view-transform.ts';
import type { FrameViewerProps } from './viewer-props.ts';
import { changeView, type ViewerStore } from './viewer-store.ts';

type Shown = Pick<FrameViewerProps, 'picture' | 'firstShown' | 'close'>;

export function useView(
  store: ViewerStore,
  stage: RefObject<HTMLElement | null>,
  { picture, firstShown, close = null }: Shown,
): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is shown first does not move a view that is there already.
  useLayoutEffect(() => {
    const screen = stage.current && sizeOf(stage.current);
    if (!picture || !screen) return;
    const { view } = store.getState();
    const sameSize = view?.frame.widthPx === picture.width && view.frame.heightPx === picture.height;
    if (!sameSize) store.setState({ view: firstView(picture, screen, firstShown) });
  }, [store, stage, picture]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: as above.
  useEffect(() => {
    const element = stage.current;
    if (!element) return;
    const observer = new ResizeObserver(() => {
      const screen = sizeOf(element);
      const { view } = store.getState();
      if (screen && view) store.setState({ view: resized(view, screen) });
      else if (screen && picture) store.setState({ view: firstView(picture, screen, firstShown) });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [store, stage, picture]);

  const shown = useRef(close);
  useEffect(() => {
    if (close === shown.current) return;
    shown.current = close;
    if (close) changeView(store, (view) => viewOfPoints(view.frame, view.screen, close));
  }, [store, close]);
}

function firstView(picture: ImageBitmap, screen: ScreenSize, points: Shown['firstShown']) {
  return viewOfPoints({ widthPx: picture.width, heightPx: picture.height }, screen, points);
}

function sizeOf(element: HTMLElement): ScreenSize | null {
  const { width, height } = element.getBoundingClientRect();
  return width > 0 && height > 0 ? { widthCss: width, heightCss: height } : null;
}
