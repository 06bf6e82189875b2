/** Listens to pointers and wheel on the stage and does what they mean. */
import { type RefObject, useEffect } from 'react';
import { nextGesture } from './gesture.ts';
import type { PointerInput } from './gesture-act.ts';
import { NO_GESTURE } from './gesture-phase.ts';
import { perform } from './perform-act.ts';
import { type ScreenPoint, zoomedAbout } from './view-transform.ts';
import { type FrameViewerProps, modeOf } from './viewer-props.ts';
import { changeView, type ViewerStore } from './viewer-store.ts';

const CHANGES: Readonly<Record<string, PointerInput['change']>> = {
  pointerdown: 'down',
  pointermove: 'move',
  pointerup: 'up',
  pointercancel: 'cancel',
  pointerleave: 'leave',
};

export function useGestures(
  store: ViewerStore,
  stage: RefObject<HTMLElement | null>,
  latest: RefObject<FrameViewerProps>,
): void {
  useEffect(() => {
    const element = stage.current;
    if (!element) return;
    let gesture = NO_GESTURE;

    const onPointer = (event: PointerEvent) => {
      const { view } = store.getState();
      const change = CHANGES[event.type];
      if (!view || !change || !latest.current.picture) return;
      if (event.type === 'pointerdown' && event.button !== 0) return;
      if (event.type === 'pointerdown') {
        element.setPointerCapture(event.pointerId);
        element.closest('.viewer')?.removeAttribute('data-by-keys');
      }
      const hand = event.pointerType === 'touch' ? 'finger' : 'mouse';
      const input = {
        change,
        id: event.pointerId,
        hand,
        at: within(element, event),
        timeMs: event.timeStamp,
      } as const;
      const { marks } = latest.current;
      const step = nextGesture(gesture, input, { view, marks, mode: modeOf(latest.current) });
      gesture = step.gesture;
      for (const act of step.acts) perform(act, store, element, latest.current);
    };

    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      changeView(store, (view) => zoomedAbout(view, within(element, event), wheelFactor(event)));
    };
    // Focus is given by what the press turns out to mean, and a long press opens no menu.
    const prevent = (event: Event) => event.preventDefault();

    for (const type of Object.keys(CHANGES)) element.addEventListener(type, onPointer as EventListener);
    element.addEventListener('wheel', onWheel, { passive: false });
    element.addEventListener('mousedown', prevent);
    element.addEventListener('contextmenu', prevent);
    return () => {
      for (const type of Object.keys(CHANGES)) element.removeEventListener(type, onPointer as EventListener);
      element.removeEventListener('wheel', onWheel);
      element.removeEventListener('mousedown', prevent);
      element.removeEventListener('contextmenu', prevent);
    };
  }, [store, stage, latest]);
}

function within(element: HTMLElement, event: MouseEvent): ScreenPoint {
  const { left, top } = element.getBoundingClientRect();
  return { xCss: event.clientX - left, yCss: event.clientY - top };
}

/** A trackpad pinch comes as a wheel with the control key and small steps. */
function wheelFactor(event: WheelEvent): number {
  const lineCss = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 24 : 1;
  const rate = event.ctrlKey ? 0.01 : 0.0016;
  const turn = -event.deltaY * lineCss * rate;
  return Math.exp(Math.min(0.7, Math.max(-0.7, turn)));
}
