import { CANCEL } from '../words/en.ts';

type Props = {
  readonly done: string;
  readonly disabled: boolean;
  readonly onDone: () => void;
  readonly onCancel: () => void;
};

/** The two ways out of a form. */
export function FormFoot({ done, disabled, onDone, onCancel }: Props) {
  return (
    <div className="row">
      <button type="button" className="button" onClick={onCancel}>
        {CANCEL}
      </button>
      <button type="button" className="button main" disabled={disabled} onClick={onDone}>
        {done}
      </button>
    </div>
  );
}
