import { type ReactNode, useState } from 'react';

type Props = {
  readonly title: string;
  /** What it says in a few words while it is closed. */
  readonly said?: string | undefined;
  /** At first: afterwards the person opens and closes it. */
  readonly open?: boolean;
  readonly children: ReactNode;
};

/** One part of a sheet: its title and what it says always show, the rest when it is touched. */
export function SheetPart({ title, said, open = false, children }: Props) {
  const [openAtFirst] = useState(open);
  return (
    <details className="sheet-part" open={openAtFirst}>
      <summary>
        <h2>{title}</h2>
        {said ? <span className="quiet">{said}</span> : null}
      </summary>
      <div className="form">{children}</div>
    </details>
  );
}
