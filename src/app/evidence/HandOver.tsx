import './evidence.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { TimeStamp } from '../../recheck/time-stamp.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { timeNotes } from '../../record/time-notes.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { saveFile } from '../parts/save-file.ts';
import { work } from '../stores.ts';
import { packageFileName } from '../words/file-names.ts';
import { HAND_OVER, makeFailureText } from '../words/hand-over.ts';
import { stampText, TIME_STAMP } from '../words/time-stamp.ts';
import { sizeText } from '../words/values.ts';
import type { MadePackage, MakeFailure } from './make-package.ts';
import { SavePieces } from './SavePieces.tsx';
import { mayShare, shareFile } from './share-file.ts';
import type { Stamped } from './stamp.ts';
import { TimeNotes } from './TimeNotes.tsx';
import { TimeStampSteps } from './TimeStampSteps.tsx';

type State =
  | { readonly is: 'idle' | 'working' }
  | { readonly is: 'failed'; readonly failure: MakeFailure }
  | { readonly is: 'made'; readonly made: MadePackage; readonly stamp: TimeStamp | null };

export function HandOver({ record }: { readonly record: InspectionRecord }) {
  const notes = useMemo(() => timeNotes(record), [record]);
  const [state, setState] = useState<State>({ is: 'idle' });
  const control = useRef<AbortController | null>(null);
  useEffect(() => () => control.current?.abort(), []);

  const make = async () => {
    control.current = new AbortController();
    setState({ is: 'working' });
    try {
      const { makePackage } = await import('./make-package.ts');
      const made = await makePackage(record, control.current.signal);
      if (made.ok) takeSealed(record, made.value.record);
      setState(
        made.ok ? { is: 'made', made: made.value, stamp: null } : { is: 'failed', failure: made.failure },
      );
    } catch (thrown) {
      setState({ is: 'idle' });
      reportUnlessAbort(thrown);
    }
  };

  const made = state.is === 'made' ? state.made : null;
  const isStale = made !== null && made.record !== record;
  return (
    <section className="hand-over" aria-label={HAND_OVER.heading}>
      <p>{HAND_OVER.sentence}</p>
      <TimeNotes notes={notes} />
      {made && !isStale ? (
        <Made
          made={made}
          stamp={state.is === 'made' ? state.stamp : null}
          onStamped={({ file, stamp }) => setState({ is: 'made', made: { ...made, file }, stamp })}
        />
      ) : (
        <button
          type="button"
          className="button"
          disabled={state.is === 'working'}
          onClick={() => void make()}
        >
          {HAND_OVER.make}
        </button>
      )}
      <p role="status">{state.is === 'working' ? HAND_OVER.working : isStale ? HAND_OVER.stale : ''}</p>
      {state.is === 'failed' ? <p className="look">{makeFailureText(state.failure)}</p> : null}
    </section>
  );
}

type MadeProps = {
  readonly made: MadePackage;
  readonly stamp: TimeStamp | null;
  readonly onStamped: (stamped: Stamped) => void;
};

function Made({ made: { record, file, fingerprint }, stamp, onStamped }: MadeProps) {
  const name = packageFileName(record);
  return (
    <>
      <p>
        {HAND_OVER.made(sizeText(file.size))} <strong className="key-print">{fingerprint}</strong>
      </p>
      <p className="quiet">{HAND_OVER.tellKey}</p>
      <div className="row">
        <button type="button" className="button main" onClick={() => saveFile(file, name)}>
          {HAND_OVER.save}
        </button>
        {mayShare(file, name) ? (
          <button type="button" className="button" onClick={() => void shareFile(file, name)}>
            {HAND_OVER.share}
          </button>
        ) : null}
      </div>
      <SavePieces file={file} name={name} />
      {stamp ? (
        <p role="status">{stampText(stamp)}</p>
      ) : (
        <details>
          <summary>{TIME_STAMP.optional}</summary>
          <TimeStampSteps file={file} name={name} onStamped={onStamped} />
        </details>
      )}
      <p className="quiet">{HAND_OVER.proves}</p>
    </>
  );
}

/** What was entered while the package was made stays, without the seal. */
function takeSealed(before: InspectionRecord, sealed: InspectionRecord): void {
  if (work.getState().open?.history.present === before) work.takeSealed(sealed);
}
