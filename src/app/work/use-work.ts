import { useMemo } from 'react';
import { useStore } from 'zustand';
import { work } from '../stores.ts';
import { type Current, currentOf } from './current.ts';
import type { OpenWork } from './work-store.ts';

export function useOpenWork(): OpenWork | null {
  return useStore(work, (state) => state.open);
}

export function useCurrent(): Current | null {
  const open = useOpenWork();
  return useMemo(() => open && currentOf(open), [open]);
}
