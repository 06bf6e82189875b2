import { useEffect, useRef } from 'react';
import { CAUTIONS, CAUTIONS_HEADING, CAUTIONS_READ } from '../words/cautions.ts';
import { AID_LINE } from '../words/en.ts';

type Props = {
  /** Read is true where the button was pressed, false where the list was just left. */
  readonly onClose: (read: boolean) => void;
};

const READ = 'read';

export function CautionsDialog({ onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
    // It opens at its button, which takes the keys: on a phone that is the end of the list.
    dialog.current?.scrollTo(0, 0);
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby="cautions-heading"
      onClose={() => onClose(dialog.current?.returnValue === READ)}
    >
      <h2 id="cautions-heading">{CAUTIONS_HEADING}</h2>
      <ol className="cautions">
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ol>
      <p className="quiet">{AID_LINE}</p>
      <form method="dialog">
        <button type="submit" value={READ} className="button main wide">
          {CAUTIONS_READ}
        </button>
      </form>
    </dialog>
  );
}
