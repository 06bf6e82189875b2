import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/sheet.css';
import './styles/first.css';
import './styles/work.css';
import './styles/steps.css';
import './styles/camera.css';
import './styles/curve.css';
import './styles/inspection.css';
import { createRoot } from 'react-dom/client';
import { openAgain } from './media/open-kept-record.ts';
import { keepForOffline } from './new-version.ts';
import { App } from './screens/App.tsx';
import { ErrorBoundary } from './screens/ErrorBoundary.tsx';
import { lastOpenRecord, takeInNote } from './storage/kept-records.ts';
import { dropNote, readNote } from './storage/parting-note.ts';
import { startSaving } from './stores.ts';
import { tellOfMistakes } from './tell-of-mistakes.ts';

/** What was open when the page went away is open again before anything is drawn. */
async function start(root: HTMLElement): Promise<void> {
  const note = readNote();
  if (note) await takeInNote(note);
  const last = await lastOpenRecord();
  if (last.ok) dropNote();
  const kept = last.ok ? last.value : (note?.unwritten.at(-1) ?? null);
  if (kept) await openAgain(kept);
  startSaving();
  createRoot(root).render(
    <ErrorBoundary>
      <App />
    </ErrorBoundary>,
  );
}

tellOfMistakes();
const root = document.getElementById('root');
if (root) void start(root);
keepForOffline();
