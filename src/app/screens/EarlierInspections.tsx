import { useCallback, useEffect, useState } from 'react';
import { dropListed, openListed } from '../media/open-kept-record.ts';
import { AskDialog } from '../parts/AskDialog.tsx';
import { TextField } from '../parts/TextField.tsx';
import { headFits, type KeptHead } from '../storage/kept-head.ts';
import { listHeads } from '../storage/kept-records.ts';
import type { StorageFailure } from '../storage/storage-failure.ts';
import { measuredAll, savingSettled } from '../stores.ts';
import { FIRST, unitText } from '../words/en.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { headText } from '../words/inspection.ts';
import { dayText } from '../words/values.ts';
import { inspectionLater } from './later-screen.ts';
import { whenIdle } from './when-idle.ts';

/** A list this long is searched, not read. */
const SEARCHED_FROM = 6;

/** The newest: what else the first screen has for its user stands beneath them. */
const SHOWN_FIRST = 5;

export function EarlierInspections() {
  const [heads, setHeads] = useState<readonly KeptHead[]>([]);
  const [failure, setFailure] = useState<StorageFailure | null>(null);
  const [removing, setRemoving] = useState<KeptHead | null>(null);
  const [typed, setTyped] = useState('');
  const [isWhole, setWhole] = useState(false);

  const list = useCallback(async () => {
    await savingSettled();
    const listed = await listHeads();
    if (listed.ok) setHeads(listed.value);
    else setFailure(listed.failure);
  }, []);
  useEffect(() => void list(), [list]);
  const hasSome = heads.length > 0;
  // The first inspection of the list opens as quickly as the others.
  useEffect(() => {
    if (!hasSome) return;
    return whenIdle(() => {
      inspectionLater.fetch().catch(() => undefined);
      measuredAll.warm();
    });
  }, [hasSome]);

  const fitting = heads.filter((head) => headFits(head, typed));
  const shown = isWhole || typed.trim() !== '' ? fitting : fitting.slice(0, SHOWN_FIRST);
  return (
    <section className="first-earlier" aria-labelledby="first-earlier">
      <h2 id="first-earlier">{FIRST.earlier}</h2>
      {failure ? <p className="look">{storageFailureText(failure)}</p> : null}
      {heads.length === 0 && !failure ? <p className="quiet">{FIRST.earlierNone}</p> : null}
      {heads.length >= SEARCHED_FROM ? (
        <TextField label={FIRST.earlierSearch} value={typed} onChange={setTyped} />
      ) : null}
      {heads.length > 0 && fitting.length === 0 ? <p>{FIRST.earlierNoneFits}</p> : null}
      <ul className="ruled">
        {shown.map((head) => (
          <li key={head.id} className="earlier">
            <button type="button" className="line-button" onClick={() => void openListed(head.id)}>
              <strong>{unitText(head.unit)}</strong>
              <span>{headText(head)}</span>
              <span className="quiet">{dayText(head.savedAt)}</span>
            </button>
            <button
              type="button"
              className="button plain"
              aria-label={FIRST.forget(unitText(head.unit))}
              onClick={() => setRemoving(head)}
            >
              {FIRST.forgetYes}
            </button>
          </li>
        ))}
      </ul>
      {shown.length < fitting.length ? (
        <button type="button" className="button wide" onClick={() => setWhole(true)}>
          {FIRST.earlierAll(fitting.length)}
        </button>
      ) : null}
      {removing ? (
        <AskDialog
          question={FIRST.forgetAsk(unitText(removing.unit))}
          yes={FIRST.forgetYes}
          onNo={() => setRemoving(null)}
          onYes={async () => {
            setRemoving(null);
            const dropped = await dropListed(removing.id);
            if (dropped.ok) await list();
            else setFailure(dropped.failure);
          }}
        />
      ) : null}
    </section>
  );
}
