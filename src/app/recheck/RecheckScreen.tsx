import '../evidence/evidence.css';
import './recheck.css';
import { useStore } from 'zustand';
import type { Recheck } from '../../recheck/recheck.ts';
import { playedClips } from '../../record/played-clips.ts';
import { useTitleFocus } from '../parts/use-title-focus.ts';
import { Notices } from '../screens/Notices.tsx';
import { AID_LINE } from '../words/en.ts';
import { playedText } from '../words/played.ts';
import { RECHECK } from '../words/recheck.ts';
import { sizeText } from '../words/values.ts';
import { CheckList } from './CheckList.tsx';
import { RecordedResults } from './RecordedResults.tsx';
import { recheck } from './recheck-store.ts';
import { SaveRecheck } from './SaveRecheck.tsx';
import { SecondReading } from './SecondReading.tsx';
import { Stills } from './Stills.tsx';
import { TimeStampPart } from './TimeStampPart.tsx';
import { useSecondReading } from './use-second-reading.ts';
import { Verdict } from './Verdict.tsx';

export function RecheckScreen({ file }: { readonly file: File }) {
  const found = useStore(recheck, (state) => state.recheck);
  const isBroken = useStore(recheck, (state) => state.isBroken);
  const title = useTitleFocus();
  return (
    <div className="recheck">
      <main>
        <header>
          <button type="button" className="button" onClick={recheck.close}>
            {RECHECK.back}
          </button>
          <h1 ref={title} tabIndex={-1}>
            {RECHECK.title}
          </h1>
          <p className="file-name">
            {file.name}, {sizeText(file.size)}
          </p>
        </header>
        <Notices />
        <div role="status" className="verdict">
          {isBroken ? <p className="look">{RECHECK.broken}</p> : null}
          {found ? <Verdict found={found} /> : null}
          {found || isBroken ? null : <p>{RECHECK.working}</p>}
        </div>
        {found ? <Found file={file} found={found} /> : null}
      </main>
      <footer className="aid-line">{AID_LINE}</footer>
    </div>
  );
}

function Found({ file, found }: { readonly file: File; readonly found: Recheck }) {
  const second = useSecondReading(found);
  const played = playedClips(found.record?.captures ?? []);
  // Of what is no package at all there is nothing to show.
  const isRead = found.checks.container.answer === 'yes' || found.record !== null;
  return (
    <>
      <CheckList found={found} />
      {played.length > 0 ? <p className="recheck-part">{playedText(played)}</p> : null}
      {isRead ? <TimeStampPart file={file} found={found} /> : null}
      <SecondReading file={file} found={found} second={second} />
      <SaveRecheck name={file.name} found={found} second={second} />
      {isRead ? (
        <details className="recheck-part">
          <summary>{RECHECK.results}</summary>
          <RecordedResults found={found} />
          <Stills key={file.name} file={file} found={found} />
        </details>
      ) : null}
    </>
  );
}
