import { useEffect, useRef, useState } from 'react';
import type { Result } from '../../basics/result.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { saveFile } from '../parts/save-file.ts';
import { ANNOTATED, annotateFailureText } from '../words/curve.ts';
import type { AnnotateFailure } from './annotate-failure.ts';

type Written = { readonly blob: Blob; readonly fileName: string };

type Props = {
  readonly write: (
    signal: AbortSignal,
    onProgress: (written: number, frames: number) => void,
  ) => Promise<Result<Written, AnnotateFailure>>;
};

type State =
  | { readonly kind: 'idle' }
  | { readonly kind: 'writing'; readonly written: number; readonly frames: number }
  | { readonly kind: 'failed'; readonly failure: AnnotateFailure };

/** Writes the clip with its lines and hands it over as a file; leaving the page part ends the writing. */
export function SaveAnnotated({ write }: Props) {
  const [state, setState] = useState<State>({ kind: 'idle' });
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);

  const begin = async () => {
    const control = new AbortController();
    running.current = control;
    setState({ kind: 'writing', written: 0, frames: 0 });
    try {
      const result = await write(control.signal, (written, frames) => {
        if (!control.signal.aborted) setState({ kind: 'writing', written, frames });
      });
      if (control.signal.aborted) return;
      setState(result.ok ? { kind: 'idle' } : { kind: 'failed', failure: result.failure });
      if (result.ok) saveFile(result.value.blob, result.value.fileName);
    } catch (reason) {
      if (!control.signal.aborted) setState({ kind: 'idle' });
      reportUnlessAbort(reason);
    }
  };

  if (state.kind === 'writing')
    return (
      <div className="save-annotated">
        <p className="trials-running">
          <progress
            aria-label={ANNOTATED.save}
            {...(state.frames > 0 ? { max: state.frames, value: state.written } : {})}
          />
          <span>{ANNOTATED.writing(state.written, state.frames)}</span>
        </p>
        <button
          type="button"
          className="button wide"
          onClick={() => {
            running.current?.abort();
            setState({ kind: 'idle' });
          }}
        >
          {ANNOTATED.cancel}
        </button>
      </div>
    );
  return (
    <div className="save-annotated">
      <button type="button" className="button wide" onClick={() => void begin()}>
        {ANNOTATED.save}
      </button>
      <p className="quiet">{ANNOTATED.hint}</p>
      {state.kind === 'failed' ? (
        <p className="look" role="status">
          {annotateFailureText(state.failure)}
        </p>
      ) : null}
    </div>
  );
}
