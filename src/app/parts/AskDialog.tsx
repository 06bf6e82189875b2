import { useEffect, useRef } from 'react';
import { CANCEL } from '../words/en.ts';

type Props = {
  readonly question: string;
  readonly yes: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
};

export function AskDialog({ question, yes, onYes, onNo }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} aria-label={question} onClose={onNo}>
      <p>{question}</p>
      <div className="row">
        <button type="button" className="button" onClick={onNo}>
          {CANCEL}
        </button>
        <button type="button" className="button main" onClick={onYes}>
          {yes}
        </button>
      </div>
    </dialog>
  );
}
