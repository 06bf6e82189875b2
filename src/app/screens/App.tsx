import { useStore } from 'zustand';
import { takeAnyFiles } from '../media/take-any-files.ts';
import { media } from '../stores.ts';
import { DROP_HERE, FIRST } from '../words/en.ts';
import { useCurrent } from '../work/use-work.ts';
import { FirstScreen } from './FirstScreen.tsx';
import { useFilesIn } from './use-files-in.ts';
import { WorkScreen } from './WorkScreen.tsx';

export function App() {
  const current = useCurrent();
  const over = useFilesIn(takeAnyFiles);
  const reading = useStore(media, (state) => state.reading > 0);
  return (
    <>
      {current ? <WorkScreen key={current.measurement.id} current={current} /> : <FirstScreen />}
      {over ? <p className="drop-here">{DROP_HERE}</p> : null}
      <p className={reading ? 'reading' : 'unseen'} role="status">
        {reading ? FIRST.busy : ''}
      </p>
    </>
  );
}
