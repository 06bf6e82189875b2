/** Keys: arrows nudge the selected mark or pan, page keys go along its line, + - 0 zoom, Delete removes, Enter places or crops what is in the middle. */
import { type FocusEvent, type KeyboardEvent, type RefObject, useRef } from 'react';
import { rectBetween } from './crop-rect.ts';
import { loupeScale } from './loupe-place.ts';
import { placedPoint } from './placed-point.ts';
import { besideInGroup } from './tab-stops.ts';
import {
  fittedView,
  frameFromScreen,
  middleOfScreen,
  ontoPicture,
  panned,
  revealed,
  screenFromFrame,
  type View,
} from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import { type FrameViewerProps, modeOf } from './viewer-props.ts';
import { changeView, type ViewerStore } from './viewer-store.ts';
import { zoomStep } from './zoom-step.ts';

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const PAN_CSS = 64;
const FINE_PX = 0.1;
const REVEAL_CSS = 24;
const LOUPE_STAYS_MS = 1500;

type Keys = {
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onKeyUp: (event: KeyboardEvent) => void;
  readonly onBlur: (event: FocusEvent) => void;
};

export function useKeys(store: ViewerStore, latest: RefObject<FrameViewerProps>): Keys {
  const nudged = useRef<string | null>(null);
  const loupeEnds = useRef(0);

  const endNudge = () => {
    if (nudged.current !== null) latest.current.onMoveEnd(nudged.current);
    nudged.current = null;
  };

  const nudge = (view: View, mark: ViewerMark, dx: number, dy: number) => {
    if (nudged.current !== mark.id) {
      endNudge();
      nudged.current = mark.id;
      latest.current.onMoveBegin(mark.id);
    }
    const point = ontoPicture(view, { xPx: mark.xPx + dx, yPx: mark.yPx + dy });
    latest.current.onMove(mark.id, placedPoint(view, point, 'keys', 1));
    const seen = revealed(view, point, REVEAL_CSS);
    const loupe = loupeScale('keys', view.scale) !== null;
    const aim = { hand: 'keys', finger: screenFromFrame(seen, point), point, placing: false } as const;
    store.setState({ view: seen, aim: loupe ? aim : null });
    clearTimeout(loupeEnds.current);
    loupeEnds.current = window.setTimeout(() => {
      if (store.getState().aim?.hand === 'keys') store.setState({ aim: null });
    }, LOUPE_STAYS_MS);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const { view } = store.getState();
    const onControls = event.target instanceof Element && event.target.closest('.viewer-controls');
    if (!view || !latest.current.picture || event.ctrlKey || event.metaKey || onControls) return;
    const mark = latest.current.marks.find((each) => each.selected) ?? null;
    const arrow = ARROWS[event.key];
    const stepPx = event.altKey || event.shiftKey ? FINE_PX : 1;
    if (arrow && mark) nudge(view, mark, arrow[0] * stepPx, arrow[1] * stepPx);
    else if (arrow) changeView(store, () => panned(view, -PAN_CSS * arrow[0], -PAN_CSS * arrow[1]));
    else if (mark && (event.key === 'PageDown' || event.key === 'PageUp'))
      focusBeside(event.currentTarget, latest.current.marks, mark, event.key === 'PageDown' ? 1 : -1);
    else if (event.key === '+' || event.key === '=') zoomStep(store, mark, 'in');
    else if (event.key === '-') zoomStep(store, mark, 'out');
    else if (event.key === '0') changeView(store, () => fittedView(view.frame, view.screen));
    else if ((event.key === 'Delete' || event.key === 'Backspace') && mark) latest.current.onDelete(mark.id);
    else if (event.key === 'Escape' && mark) latest.current.onSelect(null);
    else if (event.key === 'Enter' && event.target === event.currentTarget) enter(view, latest.current);
    else return;
    event.preventDefault();
  };

  const onKeyUp = (event: KeyboardEvent) => {
    event.currentTarget.setAttribute('data-by-keys', '');
    if (ARROWS[event.key]) endNudge();
  };
  return { onKeyDown, onKeyUp, onBlur: endNudge };
}

/** By its focus it is selected. */
function focusBeside(viewer: Element, marks: readonly ViewerMark[], mark: ViewerMark, by: 1 | -1): void {
  const id = besideInGroup(marks, mark, by);
  const next = id === null ? null : viewer.querySelector<SVGElement>(`[data-mark-id="${CSS.escape(id)}"]`);
  next?.focus({ preventScroll: true });
}

/** Without a pointer the middle of the viewer is the aim: pan the picture under it. */
function enter(view: View, props: FrameViewerProps): void {
  const middle = frameFromScreen(view, middleOfScreen(view));
  const mode = modeOf(props);
  if (mode === 'place') props.onPlace(placedPoint(view, middle, 'keys', 1));
  if (mode === 'crop') {
    const at = (share: number) => ({
      xCss: view.screen.widthCss * share,
      yCss: view.screen.heightCss * share,
    });
    const corner = (share: number) => ontoPicture(view, frameFromScreen(view, at(share)));
    props.cropMode?.onCrop(rectBetween(corner(0.25), corner(0.75)));
  }
}
