import { type ComponentProps, lazy, Suspense, useState } from 'react';
import { useStore } from 'zustand';
import { camera } from '../camera/camera-store.ts';
import { fetchedInspection, fetchInspection } from '../inspection/fetch-inspection.ts';
import { takeAnyFiles } from '../media/take-any-files.ts';
import { recheck } from '../recheck/recheck-store.ts';
import { ReportScreen } from '../report/ReportScreen.tsx';
import { media } from '../stores.ts';
import { DROP_HERE, FIRST } from '../words/en.ts';
import { currentOf } from '../work/current.ts';
import { useOpenWork } from '../work/use-work.ts';
import type { OpenWork } from '../work/work-store.ts';
import { FirstScreen } from './FirstScreen.tsx';
import { useFilesIn } from './use-files-in.ts';

// Fetched when they are gone to: the first view of the page does without them.
const CameraScreen = lazy(async () => ({
  default: (await import('../camera/CameraScreen.tsx')).CameraScreen,
}));
const InspectionLater = lazy(fetchInspection);
const WheelEndScreen = lazy(async () => ({
  default: (await import('../wheel-end/WheelEndScreen.tsx')).WheelEndScreen,
}));
const WorkScreen = lazy(async () => ({ default: (await import('./WorkScreen.tsx')).WorkScreen }));
const RecheckScreen = lazy(async () => ({
  default: (await import('../recheck/RecheckScreen.tsx')).RecheckScreen,
}));

export function App() {
  const open = useOpenWork();
  const cameraShown = useStore(camera, (state) => state.shown);
  const over = useFilesIn(cameraShown ? camera.add : takeAnyFiles);
  const evidence = useStore(recheck, (state) => state.file);
  const reading = useStore(media, (state) => state.reading > 0);
  return (
    <>
      <Suspense>
        {evidence ? <RecheckScreen file={evidence} /> : <Screen open={open} cameraShown={cameraShown} />}
      </Suspense>
      {over ? <p className="drop-here">{DROP_HERE}</p> : null}
      <p className={reading ? 'reading' : 'unseen'} role="status">
        {reading ? FIRST.busy : ''}
      </p>
    </>
  );
}

type Props = { readonly open: OpenWork | null; readonly cameraShown: boolean };

function Screen({ open, cameraShown }: Props) {
  if (cameraShown) return <CameraScreen />;
  if (!open) return <FirstScreen />;
  const record = open.history.present;
  const current = currentOf(open);
  if (current) return <WorkScreen key={current.measurement.id} current={current} />;
  const wheelEnd = record.wheelEnds.find(({ id }) => id === open.place.target.wheelEndId);
  if (open.place.screen === 'wheel-end' && wheelEnd)
    return <WheelEndScreen key={wheelEnd.id} record={record} wheelEnd={wheelEnd} />;
  if (open.place.screen === 'report') return <ReportScreen key={record.id} record={record} />;
  return <InspectionScreen key={record.id} record={record} />;
}

function InspectionScreen(props: ComponentProps<typeof InspectionLater>) {
  const [Fetched] = useState(fetchedInspection);
  return Fetched ? <Fetched {...props} /> : <InspectionLater {...props} />;
}
