/** Files in: chosen, dropped or pasted. Each becomes a capture of the open record, or is one that the record misses, or fails. */
import type { Capture } from '../../captures/capture.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import { keepCapture } from '../storage/kept-captures.ts';
import { media, notices, work } from '../stores.ts';
import { captureFailureText } from '../words/failures-captures.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { currentOf } from '../work/current.ts';
import { startWheelEnd } from './start-wheel-end.ts';

export async function takePictures(files: readonly File[]): Promise<void> {
  await media.whileReading(async () => {
    const { openCapture } = await import('../../captures/open-capture.browser.ts');
    const { signal } = new AbortController();
    let recordId = openRecordId();
    for (const file of files) {
      const opened = await openCapture(file, { id: crypto.randomUUID(), signal });
      const topic = `file ${file.name}`;
      if (!opened.ok) {
        notices.tell(topic, captureFailureText(opened.failure), file.name);
        continue;
      }
      notices.clear(topic);
      await keepFile(opened.value.capture, file);
      if (recordId === null && openRecordId() === null) recordId = startWheelEnd();
      // The person may have gone to another record while the file was read: it is none of that one's pictures.
      if (recordId === openRecordId()) addToRecord(opened.value.capture);
    }
  });
}

const openRecordId = () => work.getState().open?.history.present.id ?? null;

async function keepFile({ sha256 }: Capture, file: Blob): Promise<void> {
  media.put(sha256, file);
  const kept = await keepCapture(sha256, file);
  if (!kept.ok) notices.tell('storage', storageFailureText(kept.failure));
}

function addToRecord(capture: Capture): void {
  const { open } = work.getState();
  const current = open && currentOf(open);
  if (!current) return;
  const known = current.record.captures.find(({ sha256 }) => sha256 === capture.sha256);
  if (!known) work.act({ type: 'add-capture', capture });
  const captureId = known?.id ?? capture.id;
  const { views } = current.measurement;
  const taken = views.some((view) => view.captureId === captureId);
  if (taken) return;
  if (capture.kind === 'clip') work.look({ captureId, frameIndex: 0 });
  else takeAsNext(captureId, views);
}

/** The first photo is taken as released, the second as applied; a further one waits until the person says what it is. */
function takeAsNext(captureId: string, views: readonly View[]): void {
  const wanted: readonly BrakeState[] = ['released', 'applied'];
  const state = wanted.find((each) => !views.some((view) => view.state === each));
  if (state) work.act({ type: 'take-view', state, captureId, frame: null });
}
