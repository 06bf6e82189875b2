import { useEffect, useRef } from 'react';
import { CANCEL, FIRST } from '../words/en.ts';

type Props = {
  readonly unit: string;
  readonly onCancel: () => void;
  readonly onRemove: () => void;
};

export function RemoveDialog({ unit, onCancel, onRemove }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} aria-label={FIRST.forget(unit)} onClose={onCancel}>
      <p>{FIRST.forgetAsk(unit)}</p>
      <div className="row">
        <button type="button" className="button" onClick={onCancel}>
          {CANCEL}
        </button>
        <button type="button" className="button main" onClick={onRemove}>
          {FIRST.forgetYes}
        </button>
      </div>
    </dialog>
  );
}
