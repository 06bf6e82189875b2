import { VIEWER_WORDS } from '../words/viewer.ts';
import { fittedView } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import { changeView, type ViewerStore } from './viewer-store.ts';
import { zoomStep } from './zoom-step.ts';

export function ViewControls(props: { readonly store: ViewerStore; readonly selected: ViewerMark | null }) {
  const { store, selected } = props;
  return (
    <fieldset className="viewer-controls" aria-label={VIEWER_WORDS.magnification}>
      <button
        type="button"
        aria-label={VIEWER_WORDS.zoomOut}
        onClick={() => zoomStep(store, selected, 'out')}
      >
        −
      </button>
      <button
        type="button"
        className="viewer-fit"
        aria-label={VIEWER_WORDS.fitLong}
        onClick={() => changeView(store, (view) => fittedView(view.frame, view.screen))}
      >
        {VIEWER_WORDS.fit}
      </button>
      <button type="button" aria-label={VIEWER_WORDS.zoomIn} onClick={() => zoomStep(store, selected, 'in')}>
        +
      </button>
    </fieldset>
  );
}
