/** The one session of this page: its stores, and the saving that follows them. */
import { createStore } from 'zustand/vanilla';
import { createMediaStore } from './media/media-store.ts';
import { createNotices } from './notices.ts';
import { createAutosave } from './storage/autosave.ts';
import { type Choices, readChoices, writeChoices } from './storage/choices.ts';
import { keepRecord, noRecordOpen } from './storage/kept-records.ts';
import { storageFailureText } from './words/failures-storage.ts';
import { createWorkStore, type OpenWork } from './work/work-store.ts';

export const work = createWorkStore();
export const media = createMediaStore();
export const notices = createNotices();
export const choices = createStore<Choices>(() => readChoices());

choices.subscribe(writeChoices);

const autosave = createAutosave<OpenWork | null>(
  (open) => open?.history.present.id ?? 'none',
  async (open) => {
    if (!open) {
      await noRecordOpen();
      return;
    }
    const record = open.history.present;
    const savedAt = new Date().toISOString();
    const kept = await keepRecord({ id: record.id, savedAt, record, place: open.place });
    if (kept.ok) notices.clear('storage');
    else notices.tell('storage', storageFailureText(kept.failure));
  },
);

export function startSaving(): void {
  work.subscribe((now, before) => {
    if (now.open !== before.open) autosave.changed(now.open);
  });
  const saveNow = () => autosave.changed(work.getState().open);
  addEventListener('pagehide', saveNow);
  document.addEventListener('visibilitychange', saveNow);
}

/** Resolves when everything entered so far is written. */
export const savingSettled = () => autosave.settled();
