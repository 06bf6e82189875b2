import { useStore } from 'zustand';
import { camera } from '../camera/camera-store.ts';
import { startInspection } from '../media/start-wheel-end.ts';
import { takeAnyFiles, takePackageFiles } from '../media/take-any-files.ts';
import { FilePicker, PICTURE_FILES, RECORD_FILES } from '../parts/FilePicker.tsx';
import { BrakeDrawing } from '../sheet/BrakeDrawing.tsx';
import { cautions, media } from '../stores.ts';
import { CAMERA } from '../words/camera.ts';
import { CAUTIONS, CAUTIONS_HEADING } from '../words/cautions.ts';
import { AID_LINE, APP_NAME, APP_SENTENCE, FIRST } from '../words/en.ts';
import { RECHECK_OPEN } from '../words/recheck-open.ts';
import { DemoSets } from './DemoSets.tsx';
import { EarlierInspections } from './EarlierInspections.tsx';
import { fetchScreens } from './later-screen.ts';
import { NewVersion } from './NewVersion.tsx';
import { Notices } from './Notices.tsx';

export function FirstScreen() {
  const reading = useStore(media, (state) => state.reading > 0);
  return (
    <div className="first">
      <main>
        <div>
          <h1>{APP_NAME}</h1>
          <p>{APP_SENTENCE}</p>
          <NewVersion />
        </div>
        <BrakeDrawing />
        <Notices />
        <section
          className="first-ways"
          aria-label={FIRST.ways}
          onPointerDown={fetchScreens}
          onFocus={fetchScreens}
        >
          <button
            type="button"
            className="button main wide"
            onClick={() => cautions.before(() => void startInspection())}
          >
            {FIRST.inspect}
          </button>
          <p className="quiet">{FIRST.inspectHint}</p>
          <FilePicker
            label={FIRST.start}
            accept={PICTURE_FILES}
            multiple
            disabled={reading}
            before={cautions.before}
            onFiles={(files) => void takeAnyFiles(files)}
          />
          <p className="quiet">{FIRST.startHint}</p>
        </section>
        <EarlierInspections />
        <section
          className="first-ways"
          aria-label={FIRST.more}
          onPointerDown={fetchScreens}
          onFocus={fetchScreens}
        >
          <DemoSets />
          <FilePicker
            label={FIRST.openRecord}
            accept={RECORD_FILES}
            onFiles={(files) => void takeAnyFiles(files)}
          />
          <FilePicker label={RECHECK_OPEN} multiple onFiles={(files) => void takePackageFiles(files)} />
          <button type="button" className="button" onClick={() => camera.show(true)}>
            {CAMERA.open}
          </button>
        </section>
        <section className="first-cautions" aria-labelledby="first-cautions">
          <h2 id="first-cautions">{CAUTIONS_HEADING}</h2>
          <ol className="cautions">
            {CAUTIONS.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ol>
        </section>
      </main>
      <footer className="aid-line">{AID_LINE}</footer>
    </div>
  );
}
