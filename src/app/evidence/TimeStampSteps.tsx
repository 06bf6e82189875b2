import { useState } from 'react';
import type { StampFailure } from '../../recheck/stamp-package.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { FilePicker } from '../parts/FilePicker.tsx';
import { saveFile } from '../parts/save-file.ts';
import { stampFailureText, TIME_STAMP } from '../words/time-stamp.ts';
import type { Stamped } from './stamp.ts';

type Props = {
  readonly file: Blob;
  readonly name: string;
  readonly onStamped: (stamped: Stamped) => void;
};

/** The two ends of the way to a time stamp: the request out, the answer in. */
export function TimeStampSteps({ file, name, onStamped }: Props) {
  const [failure, setFailure] = useState<StampFailure | null>(null);
  const save = async () => {
    const { requestOf } = await import('./stamp.ts');
    const request = await requestOf(file);
    setFailure(request.ok ? null : request.failure);
    if (request.ok) saveFile(request.value, `${name}.tsq`);
  };
  const put = async (answer: Blob) => {
    const { stampedWith } = await import('./stamp.ts');
    const stamped = await stampedWith(file, answer);
    setFailure(stamped.ok ? null : stamped.failure);
    if (stamped.ok) onStamped(stamped.value);
  };
  return (
    <div className="stamp-steps">
      <p>{TIME_STAMP.sentence}</p>
      <div className="row">
        <button type="button" className="button" onClick={() => void save().catch(reportUnlessAbort)}>
          {TIME_STAMP.request}
        </button>
        <FilePicker
          label={TIME_STAMP.answer}
          onFiles={([answer]) => answer && void put(answer).catch(reportUnlessAbort)}
        />
      </div>
      <p role="status" className="look">
        {failure ? stampFailureText(failure) : ''}
      </p>
    </div>
  );
}
