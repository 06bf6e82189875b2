import { useState } from 'react';
import { AXLE_KINDS, type AxleKind, MOST_AXLES, type Vehicle } from '../../record/vehicle.ts';
import { AskDialog } from '../parts/AskDialog.tsx';
import { Select } from '../parts/Select.tsx';
import { work } from '../stores.ts';
import { AXLE_KIND_NAMES, INSPECTION } from '../words/inspection.ts';

export function AddAxles({ vehicle }: { readonly vehicle: Vehicle }) {
  if (vehicle.axles.length >= MOST_AXLES) return null;
  const add = (kind: AxleKind) =>
    work.act({ type: 'add-axle', kind, wheelEndIds: [crypto.randomUUID(), crypto.randomUUID()] });
  return (
    <div className="row add-axles">
      {AXLE_KINDS.map((kind) => (
        <button key={kind} type="button" className="button" onClick={() => add(kind)}>
          {INSPECTION.addAxle(kind)}
        </button>
      ))}
    </div>
  );
}

/** What the axles are, and taking one away. */
export function AxleList({ vehicle }: { readonly vehicle: Vehicle }) {
  const [removing, setRemoving] = useState<number | null>(null);
  return (
    <>
      <ul className="ruled axle-list">
        {vehicle.axles.map(({ kind }, index) => {
          const axle = index + 1;
          return (
            <li key={axle}>
              <span>{INSPECTION.axle(axle)}</span>
              <Select
                label={INSPECTION.axleKind(axle)}
                none={kind === null ? INSPECTION.kindNotSaid : null}
                values={AXLE_KINDS}
                names={AXLE_KIND_NAMES}
                value={kind}
                onChange={(chosen) => chosen && work.act({ type: 'set-axle-kind', axle, kind: chosen })}
              />
              <button
                type="button"
                className="button plain"
                aria-label={INSPECTION.removeAxle(axle)}
                onClick={() => setRemoving(axle)}
              >
                {INSPECTION.remove}
              </button>
            </li>
          );
        })}
      </ul>
      {removing === null ? null : (
        <AskDialog
          question={INSPECTION.removeAxleAsk(removing)}
          yes={INSPECTION.remove}
          onNo={() => setRemoving(null)}
          onYes={() => {
            setRemoving(null);
            work.act({ type: 'remove-axle', axle: removing });
          }}
        />
      )}
    </>
  );
}
