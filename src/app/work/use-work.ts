import { useStore } from 'zustand';
import { work } from '../stores.ts';
import type { OpenWork } from './work-store.ts';

export function useOpenWork(): OpenWork | null {
  return useStore(work, (state) => state.open);
}

/** While a mark is being moved. */
export function useMoving(): boolean {
  return useStore(work, ({ open }) => open !== null && open.history.held !== null);
}
