/** Does what a gesture came to. */
import type { GestureAct } from './gesture-act.ts';
import { placedPoint } from './placed-point.ts';
import { panned, pinched, zoomedAbout } from './view-transform.ts';
import type { FrameViewerProps } from './viewer-props.ts';
import type { ViewerStore } from './viewer-store.ts';

const DOUBLE_TAP_ZOOM = 2.5;

export function perform(
  act: GestureAct,
  store: ViewerStore,
  stage: HTMLElement,
  props: FrameViewerProps,
): void {
  const { view } = store.getState();
  if (!view) return;
  switch (act.act) {
    case 'pan':
      store.setState({ view: panned(view, act.dxCss, act.dyCss) });
      break;
    case 'pinch':
      store.setState({ view: pinched(view, act.from, act.to) });
      break;
    case 'zoom-in':
      store.setState({ view: zoomedAbout(view, act.at, DOUBLE_TAP_ZOOM) });
      break;
    case 'select':
      select(act.id, stage, props);
      break;
    case 'aim':
      store.setState({ aim: act.aim });
      break;
    case 'place':
      focusOn(stage.closest<HTMLElement>('.viewer'));
      props.onPlace(placedPoint(view, act.point, act.hand, 1));
      break;
    case 'move-begin':
      props.onMoveBegin(act.id);
      break;
    case 'move':
      props.onMove(act.id, placedPoint(view, act.point, act.hand, act.gearing));
      break;
    case 'move-cancel':
      if (props.onMoveCancel) props.onMoveCancel(act.id);
      else props.onMoveEnd(act.id);
      break;
    case 'move-end':
      props.onMoveEnd(act.id);
      break;
    case 'draw-crop':
      store.setState({ draftCrop: act.rect });
      break;
    case 'crop':
      props.cropMode?.onCrop(act.rect);
      break;
  }
}

/** A mark that gets the focus is selected by that; only one that has it already is selected here. */
function select(id: string | null, stage: HTMLElement, props: FrameViewerProps): void {
  const mark = id === null ? null : stage.querySelector<SVGElement>(`[data-mark-id="${CSS.escape(id)}"]`);
  if (mark && document.activeElement !== mark) {
    focusOn(mark);
    return;
  }
  if (id === null) focusOn(stage.closest<HTMLElement>('.viewer'));
  props.onSelect(id);
}

function focusOn(element: HTMLElement | SVGElement | null): void {
  element?.focus({ preventScroll: true });
}
