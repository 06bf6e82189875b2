/** One step in or out: about the selected mark while it is in sight, else about the middle. */
import { middleOfScreen, revealed, screenFromFrame, zoomedAbout } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import { changeView, type ViewerStore } from './viewer-store.ts';

const STEP = 1.6;

export function zoomStep(store: ViewerStore, mark: ViewerMark | null, sense: 'in' | 'out'): void {
  changeView(store, (view) => {
    const inSight = mark !== null && revealed(view, mark, 0) === view;
    const still = inSight ? screenFromFrame(view, mark) : middleOfScreen(view);
    return zoomedAbout(view, still, sense === 'in' ? STEP : 1 / STEP);
  });
}
