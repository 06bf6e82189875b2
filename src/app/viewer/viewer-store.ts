/** What changes with every motion of a hand, kept outside React so that pan and zoom render nothing. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { CropRect } from './crop-rect.ts';
import type { Aim } from './gesture-act.ts';
import type { View } from './view-transform.ts';

export type ViewerState = {
  /** Null until a picture and the size of the viewer are known. */
  readonly view: View | null;
  readonly aim: Aim | null;
  readonly draftCrop: CropRect | null;
};

export type ViewerStore = StoreApi<ViewerState>;

export function createViewerStore(): ViewerStore {
  return createStore<ViewerState>(() => ({ view: null, aim: null, draftCrop: null }));
}

export function changeView(store: ViewerStore, change: (view: View) => View): void {
  const { view } = store.getState();
  if (view) store.setState({ view: change(view) });
}
