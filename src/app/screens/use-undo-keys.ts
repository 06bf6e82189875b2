import { useEffect } from 'react';
import { work } from '../stores.ts';

/** Ctrl or Cmd with Z and Y, except inside a field, which has its own undo. */
export function useUndoKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const inField = event.target instanceof HTMLInputElement && event.target.type === 'text';
      if (!(event.ctrlKey || event.metaKey) || event.altKey || inField) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) work.redo();
      else work.undo();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
}
