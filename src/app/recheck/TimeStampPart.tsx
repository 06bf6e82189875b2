import { useState } from 'react';
import { useStore } from 'zustand';
import type { Recheck } from '../../recheck/recheck.ts';
import type { TimeStamp } from '../../recheck/time-stamp.ts';
import type { Stamped } from '../evidence/stamp.ts';
import { TimeNotes } from '../evidence/TimeNotes.tsx';
import { TimeStampSteps } from '../evidence/TimeStampSteps.tsx';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { FilePicker } from '../parts/FilePicker.tsx';
import { saveFile } from '../parts/save-file.ts';
import { stampedFileName } from '../words/file-names.ts';
import { stampText, TIME_STAMP, timeRootsFailureText, trustText } from '../words/time-stamp.ts';
import { recheck } from './recheck-store.ts';

export function TimeStampPart({ file, found }: { readonly file: File; readonly found: Recheck }) {
  const savedAs = useStore(recheck, (state) => state.savedAs);
  const { timeStamp, checks } = found;
  const mayStamp = checks.container.answer === 'yes' && checks.timeStamp.answer !== 'yes';
  const onStamped = ({ file: stamped }: Stamped) => {
    const name = stampedFileName(file.name);
    saveFile(stamped, name);
    void recheck.open(new File([stamped], name, { type: stamped.type }), name);
  };
  return (
    <section aria-labelledby="recheck-time" className="recheck-part">
      <h2 id="recheck-time">{TIME_STAMP.heading}</h2>
      {savedAs === null ? null : <p role="status">{TIME_STAMP.savedAs(savedAs)}</p>}
      {timeStamp ? <Attested timeStamp={timeStamp} /> : null}
      {checks.timeStamp.answer === 'none' ? <p>{TIME_STAMP.none}</p> : null}
      <TimeNotes notes={found.times} />
      {mayStamp ? (
        <details>
          <summary>{TIME_STAMP.optional}</summary>
          <TimeStampSteps file={file} name={file.name} onStamped={onStamped} />
        </details>
      ) : null}
    </section>
  );
}

function Attested({ timeStamp }: { readonly timeStamp: TimeStamp }) {
  const [fault, setFault] = useState('');
  const trust = async (files: readonly File[]) => {
    const { readTimeRoots } = await import('../../recheck/time-roots.ts');
    const read = await Promise.all(files.map(async (each) => new Uint8Array(await each.arrayBuffer())));
    const roots = read.map(readTimeRoots);
    const failed = roots.find((each) => !each.ok);
    setFault(failed && !failed.ok ? timeRootsFailureText(failed.failure) : '');
    if (!failed) await recheck.trust(roots.flatMap((each) => (each.ok ? each.value : [])));
  };
  return (
    <>
      <p>
        <strong>{stampText(timeStamp)}</strong>
      </p>
      <dl className="stamp-facts">
        <dt className="quiet">{TIME_STAMP.authority}</dt>
        <dd>{timeStamp.authority}</dd>
        <dt className="quiet">{TIME_STAMP.certificate}</dt>
        <dd>{timeStamp.certificateSha256.match(/.{4}/g)?.join(' ')}</dd>
      </dl>
      <p className={timeStamp.trust === 'reaches a root' ? undefined : 'look'}>
        {trustText(timeStamp.trust)}
      </p>
      <p className="quiet">{TIME_STAMP.notRevoked}</p>
      <div className="row">
        <FilePicker
          label={TIME_STAMP.roots}
          multiple
          onFiles={(files) => void trust(files).catch(reportUnlessAbort)}
        />
      </div>
      <p role="status" className="look">
        {fault}
      </p>
    </>
  );
}
