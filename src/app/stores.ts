/** The stores of this page, and the saving that follows them. */
import { createStore } from 'zustand/vanilla';
import { createCautionsFirst } from './cautions-first.ts';
import { createMeasuredAll } from './measuring/measured-all.ts';
import { createMediaStore } from './media/media-store.ts';
import { createNotices } from './notices.ts';
import { createAutosave } from './storage/autosave.ts';
import { type Choices, readChoices, writeChoices } from './storage/choices.ts';
import type { KeptRecord } from './storage/database.ts';
import { keepRecord, noRecordOpen } from './storage/kept-records.ts';
import { dropNote, leaveNote, newestOfEach } from './storage/parting-note.ts';
import { createRecordHold } from './storage/record-hold.ts';
import { unitText } from './words/en.ts';
import { storageFailureText } from './words/failures-storage.ts';
import { TABS } from './words/tabs.ts';
import { createWorkStore, type OpenWork } from './work/work-store.ts';

export const work = createWorkStore();
export const media = createMediaStore();
export const notices = createNotices();
export const measuredAll = createMeasuredAll(
  () => new Worker(new URL('./measuring/measure.worker.ts', import.meta.url), { type: 'module' }),
);
export const choices = createStore<Choices>(() => readChoices());
export const cautions = createCautionsFirst(choices);

choices.subscribe(writeChoices);

const autosave = createAutosave<OpenWork | null>(
  (open) => open?.keptId ?? 'none',
  async (open) => {
    if (!open) {
      await noRecordOpen();
      return;
    }
    const kept = await keepRecord(keptOf(open));
    if (kept.ok) notices.clear('storage');
    else notices.tell('storage', storageFailureText(kept.failure));
  },
);

function keptOf({ keptId, history, place }: OpenWork): KeptRecord {
  return { id: keptId, savedAt: new Date().toISOString(), record: history.present, place };
}

export const hold = createRecordHold(async (keptId) => {
  const { open } = work.getState();
  if (open?.keptId === keptId) {
    work.closeRecord();
    notices.tell('elsewhere', TABS.taken(unitText(open.history.present.vehicle.unit)));
  }
  await autosave.settled();
});

export function startSaving(): void {
  work.subscribe((now, before) => {
    if (now.open === before.open) return;
    autosave.changed(now.open);
    if (now.open?.keptId !== before.open?.keptId) void holdWhatIsOpen();
  });
  const part = () => {
    const { open } = work.getState();
    // Closed and written: the note would say nothing, and another tab's stands there perhaps.
    if (open === null && autosave.unwritten().length === 0) return;
    // What is open is noted in any case: the database may have refused it.
    const states = [...autosave.unwritten(), open].filter((state) => state !== null);
    leaveNote({ unwritten: newestOfEach(states).map(keptOf), openId: open?.keptId ?? null });
  };
  addEventListener('pagehide', part);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') part();
    else dropNote();
  });
}

async function holdWhatIsOpen(): Promise<void> {
  await autosave.settled();
  await hold.only(work.getState().open?.keptId ?? null);
}

/** Resolves when everything entered so far is written. */
export const savingSettled = () => autosave.settled();
