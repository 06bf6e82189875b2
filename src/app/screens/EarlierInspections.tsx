import { useCallback, useEffect, useState } from 'react';
import { openKeptRecord } from '../media/open-kept-record.ts';
import type { KeptRecord } from '../storage/database.ts';
import { dropRecord, listRecords } from '../storage/kept-records.ts';
import type { StorageFailure } from '../storage/storage-failure.ts';
import { savingSettled } from '../stores.ts';
import { FIRST, unitText } from '../words/en.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { positionText } from '../words/given.ts';
import { dayText } from '../words/values.ts';
import { RemoveDialog } from './RemoveDialog.tsx';

export function EarlierInspections() {
  const [kept, setKept] = useState<readonly KeptRecord[]>([]);
  const [failure, setFailure] = useState<StorageFailure | null>(null);
  const [removing, setRemoving] = useState<KeptRecord | null>(null);

  const list = useCallback(async () => {
    await savingSettled();
    const listed = await listRecords();
    if (listed.ok) setKept(listed.value);
    else setFailure(listed.failure);
  }, []);
  useEffect(() => void list(), [list]);

  return (
    <section className="first-earlier" aria-labelledby="first-earlier">
      <h2 id="first-earlier">{FIRST.earlier}</h2>
      {failure ? <p className="look">{storageFailureText(failure)}</p> : null}
      {kept.length === 0 && !failure ? <p className="quiet">{FIRST.earlierNone}</p> : null}
      <ul className="ruled">
        {kept.map((one) => (
          <li key={one.id} className="earlier">
            <button type="button" className="line-button" onClick={() => void openKeptRecord(one)}>
              <strong>{unitText(one.record.vehicle.unit)}</strong>
              <span>{one.record.wheelEnds.map(({ position }) => positionText(position)).join('; ')}</span>
              <span className="quiet">{dayText(one.savedAt)}</span>
            </button>
            <button
              type="button"
              className="button plain"
              aria-label={FIRST.forget(unitText(one.record.vehicle.unit))}
              onClick={() => setRemoving(one)}
            >
              {FIRST.forgetYes}
            </button>
          </li>
        ))}
      </ul>
      {removing ? (
        <RemoveDialog
          unit={unitText(removing.record.vehicle.unit)}
          onCancel={() => setRemoving(null)}
          onRemove={async () => {
            setRemoving(null);
            const dropped = await dropRecord(removing.id);
            if (dropped.ok) await list();
            else setFailure(dropped.failure);
          }}
        />
      ) : null}
    </section>
  );
}
