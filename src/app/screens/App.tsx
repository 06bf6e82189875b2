import { useStore } from 'zustand';
import { camera } from '../camera/camera-store.ts';
import { takeAnyFiles } from '../media/take-any-files.ts';
import { recheck } from '../recheck/recheck-store.ts';
import { ReportScreen } from '../report/ReportScreen.tsx';
import { cautions, media } from '../stores.ts';
import { DROP_HERE, FIRST } from '../words/en.ts';
import { currentOf } from '../work/current.ts';
import { useOpenWork } from '../work/use-work.ts';
import type { OpenWork } from '../work/work-store.ts';
import { CautionsDialog } from './CautionsDialog.tsx';
import { FirstScreen } from './FirstScreen.tsx';
import { Later } from './Later.tsx';
import { cameraLater, inspectionLater, recheckLater, wheelEndLater, workLater } from './later-screen.ts';
import { useFilesIn } from './use-files-in.ts';
import { useWay } from './use-way.ts';
import { goUp, wayOf } from './way.ts';

export function App() {
  const open = useOpenWork();
  const cameraShown = useStore(camera, (state) => state.shown);
  const over = useFilesIn(cameraShown ? camera.add : takeAnyFiles);
  const evidence = useStore(recheck, (state) => state.file);
  const reading = useStore(media, (state) => state.reading > 0);
  const cautionsFirst = useStore(cautions, ({ waiting }) => waiting.length > 0);
  useWay(wayOf({ open, isCamera: cameraShown, isRecheck: evidence !== null }), goUp);
  return (
    <>
      {evidence ? (
        <Later screen={recheckLater} given={{ file: evidence }} />
      ) : (
        <Screen open={open} cameraShown={cameraShown} />
      )}
      {cautionsFirst ? <CautionsDialog onClose={cautions.closed} /> : null}
      {over ? <p className="drop-here">{DROP_HERE}</p> : null}
      <p className={reading ? 'reading' : 'unseen'} role="status">
        {reading ? FIRST.busy : ''}
      </p>
    </>
  );
}

type Props = { readonly open: OpenWork | null; readonly cameraShown: boolean };

function Screen({ open, cameraShown }: Props) {
  if (cameraShown) return <Later screen={cameraLater} given={{}} />;
  if (!open) return <FirstScreen />;
  const record = open.history.present;
  const current = currentOf(open);
  if (current) return <Later key={current.measurement.id} screen={workLater} given={{ current }} />;
  const wheelEnd = record.wheelEnds.find(({ id }) => id === open.place.target.wheelEndId);
  if (open.place.screen === 'wheel-end' && wheelEnd)
    return <Later key={wheelEnd.id} screen={wheelEndLater} given={{ record, wheelEnd }} />;
  if (open.place.screen === 'report') return <ReportScreen key={record.id} record={record} />;
  return <Later key={record.id} screen={inspectionLater} given={{ record }} />;
}
