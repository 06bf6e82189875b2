/** Files in: chosen, dropped or pasted. Each becomes a capture of the open record, or is one that the record misses, or fails. */
import type { Capture } from '../../captures/capture.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import { MOST_PHOTOS } from '../../record/wheel-end.ts';
import { media, notices, work } from '../stores.ts';
import { PLACELESS, photosFullText } from '../words/en.ts';
import { captureFailureText } from '../words/failures-captures.ts';
import { currentOf } from '../work/current.ts';
import { keepFile } from './keep-file.ts';
import { startWheelEnd } from './start-wheel-end.ts';

/** What a picture is taken for, once the record lists it. */
export type TakeCapture = (captureId: string, kind: Capture['kind']) => void;

export async function takePictures(
  files: readonly File[],
  take: TakeCapture = takeWhereWorkIs,
): Promise<void> {
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
      await keepFile(opened.value.capture.sha256, file);
      if (recordId === null && openRecordId() === null) recordId = startWheelEnd();
      // The person may have gone to another record while the file was read: it is none of that one's pictures.
      if (recordId === openRecordId()) addToRecord(opened.value.capture, take);
    }
  });
}

const openRecordId = () => work.getState().open?.history.present.id ?? null;

function addToRecord(capture: Capture, take: TakeCapture): void {
  const record = work.getState().open?.history.present;
  if (!record) return;
  const known = record.captures.find(({ sha256 }) => sha256 === capture.sha256);
  if (!known) work.act({ type: 'add-capture', capture });
  take(known?.id ?? capture.id, capture.kind);
}

function takeWhereWorkIs(captureId: string, kind: Capture['kind']): void {
  const { open } = work.getState();
  if (!open) return;
  const current = currentOf(open);
  if (current) takeToMeasure(captureId, kind, current.measurement.views);
  else if (open.place.screen === 'wheel-end') keepAsPhoto(captureId);
  else notices.tell('placeless', PLACELESS);
}

function takeToMeasure(captureId: string, kind: Capture['kind'], views: readonly View[]): void {
  const taken = views.some((view) => view.captureId === captureId);
  if (taken) return;
  if (kind === 'clip') work.look({ captureId, frameIndex: 0 });
  else takeAsNext(captureId, views);
}

function keepAsPhoto(captureId: string): void {
  const { open } = work.getState();
  const wheelEnd = open?.history.present.wheelEnds.find(({ id }) => id === open.place.target.wheelEndId);
  if (!wheelEnd || wheelEnd.photos.some((photo) => photo.captureId === captureId)) return;
  if (wheelEnd.photos.length >= MOST_PHOTOS) {
    notices.tell('photos', photosFullText(MOST_PHOTOS));
    return;
  }
  const photos = [...wheelEnd.photos, { captureId, caption: '' }];
  work.act({ type: 'set-wheel-end', facts: { photos } });
}

/** The first photo is taken as released, the second as applied; a further one waits until the person says what it is. */
function takeAsNext(captureId: string, views: readonly View[]): void {
  const wanted: readonly BrakeState[] = ['released', 'applied'];
  const state = wanted.find((each) => !views.some((view) => view.state === each));
  if (state) work.act({ type: 'take-view', state, captureId, frame: null });
}
