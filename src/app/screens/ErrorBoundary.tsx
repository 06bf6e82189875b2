import { Component, type ReactNode } from 'react';
import { work } from '../stores.ts';
import { APP_NAME, BAR, CRASH } from '../words/en.ts';
import { saveRecordFile } from './save-record-file.ts';

type Props = { readonly children: ReactNode };
type State = { readonly broken: boolean };

/** A mistake of ours ends a screen, never the work: the record lives outside React and is still there. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { broken: false };

  static getDerivedStateFromError(): State {
    return { broken: true };
  }

  override render() {
    if (!this.state.broken) return this.props.children;
    const record = work.getState().open?.history.present;
    return (
      <main className="crash">
        <h1>{APP_NAME}</h1>
        <h2>{CRASH.heading}</h2>
        <p role="alert">{CRASH.kept}</p>
        <div className="row">
          {record ? (
            <button type="button" className="button" onClick={() => saveRecordFile(record)}>
              {BAR.saveRecord}
            </button>
          ) : null}
          <button type="button" className="button main" onClick={() => location.reload()}>
            {CRASH.reload}
          </button>
        </div>
      </main>
    );
  }
}
