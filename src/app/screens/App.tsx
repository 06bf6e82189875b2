import { useStore } from 'zustand';
import { CameraScreen } from '../camera/CameraScreen.tsx';
import { camera } from '../camera/camera-store.ts';
import { takeAnyFiles } from '../media/take-any-files.ts';
import { media } from '../stores.ts';
import { DROP_HERE, FIRST } from '../words/en.ts';
import type { Current } from '../work/current.ts';
import { useCurrent } from '../work/use-work.ts';
import { FirstScreen } from './FirstScreen.tsx';
import { useFilesIn } from './use-files-in.ts';
import { WorkScreen } from './WorkScreen.tsx';

export function App() {
  const current = useCurrent();
  const cameraShown = useStore(camera, (state) => state.shown);
  const over = useFilesIn(cameraShown ? camera.add : takeAnyFiles);
  const reading = useStore(media, (state) => state.reading > 0);
  return (
    <>
      <Screen current={current} cameraShown={cameraShown} />
      {over ? <p className="drop-here">{DROP_HERE}</p> : null}
      <p className={reading ? 'reading' : 'unseen'} role="status">
        {reading ? FIRST.busy : ''}
      </p>
    </>
  );
}

function Screen({
  current,
  cameraShown,
}: {
  readonly current: Current | null;
  readonly cameraShown: boolean;
}) {
  if (cameraShown) return <CameraScreen />;
  return current ? <WorkScreen key={current.measurement.id} current={current} /> : <FirstScreen />;
}
