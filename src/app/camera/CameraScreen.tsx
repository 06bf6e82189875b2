import { useStore } from 'zustand';
import { FilePicker, PHOTO_FILES } from '../parts/FilePicker.tsx';
import { PrintLinks } from '../parts/PrintLinks.tsx';
import { useTitleFocus } from '../parts/use-title-focus.ts';
import { Notices } from '../screens/Notices.tsx';
import { CAMERA, progressText } from '../words/camera.ts';
import { AID_LINE } from '../words/en.ts';
import { BoardPhotos } from './BoardPhotos.tsx';
import { CalibrationResult } from './CalibrationResult.tsx';
import { camera } from './camera-store.ts';
import { KeptCameras } from './KeptCameras.tsx';
import { useBoardSearch } from './use-board-search.ts';
import { useCalibration } from './use-calibration.ts';
import { useKeptCameras } from './use-kept-cameras.ts';

export function CameraScreen() {
  const photos = useStore(camera, (state) => state.photos);
  const [kept, listKept] = useKeptCameras();
  useBoardSearch();
  const shown = useCalibration();
  const title = useTitleFocus();

  return (
    <div className="camera">
      <main>
        <header>
          <button type="button" className="button" onClick={() => camera.show(false)}>
            {CAMERA.back}
          </button>
          <h1 ref={title} tabIndex={-1}>
            {CAMERA.title}
          </h1>
          <p>{CAMERA.sentence}</p>
        </header>
        <Notices />
        <PrintPart />
        <section aria-labelledby="camera-take" className="camera-part">
          <h2 id="camera-take">{CAMERA.take}</h2>
          <ul className="how">
            {CAMERA.takeHow.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <div className="row">
            <FilePicker
              label={photos.length === 0 ? CAMERA.choose : CAMERA.more}
              accept={PHOTO_FILES}
              multiple
              main={photos.length === 0}
              onFiles={camera.add}
            />
            {photos.length > 0 ? (
              <button type="button" className="button" onClick={camera.clear}>
                {CAMERA.clear}
              </button>
            ) : null}
          </div>
          <p role="status">{statusText(shown.calibrated !== null)}</p>
          <BoardPhotos photos={photos} shown={shown} />
        </section>
        <CalibrationResult shown={shown} chosen={photos.length} onKept={() => void listKept()} />
        <KeptCameras kept={kept} onDropped={() => void listKept()} />
      </main>
      <footer className="aid-line">{AID_LINE}</footer>
    </div>
  );

  function statusText(done: boolean): string {
    if (photos.length === 0 || done) return '';
    const at = photos.findIndex(({ search }) => search.is === 'waiting' || search.is === 'under-way');
    return at < 0 ? CAMERA.working : progressText(at + 1, photos.length);
  }
}

function PrintPart() {
  return (
    <section aria-labelledby="camera-print" className="camera-part">
      <h2 id="camera-print">{CAMERA.print}</h2>
      <p className="print-links">
        <PrintLinks page="calibration-board" words={CAMERA} />
      </p>
      <p className="quiet">{CAMERA.printHint}</p>
    </section>
  );
}
