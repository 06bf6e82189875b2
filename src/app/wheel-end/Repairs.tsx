import type { Repair } from '../../record/repair.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { CAUSE_NAMES } from '../words/causes.ts';
import { dayText, lengthText } from '../words/values.ts';
import { REPAIR } from '../words/wheel-end.ts';
import { useDraft } from '../work/use-draft.ts';
import { draftNames, repairDraftSchema } from './drafts.ts';
import { RepairForm } from './RepairForm.tsx';

type Props = { readonly wheelEnd: WheelEnd; readonly inspector: string };

export function Repairs({ wheelEnd, inspector }: Props) {
  const [draft, setDraft] = useDraft(draftNames(wheelEnd.id).repair, repairDraftSchema);
  const write = (repair: Repair) => setDraft({ repair, parts: repair.parts.join('\n') });
  const form = draft ? (
    <RepairForm
      key={draft.repair.id}
      draft={draft}
      onChange={setDraft}
      onDone={(line) => {
        work.act({ type: 'put-line', list: 'repairs', line });
        setDraft(null);
      }}
      onCancel={() => setDraft(null)}
    />
  ) : null;
  const isNew = wheelEnd.repairs.every(({ id }) => id !== draft?.repair.id);
  return (
    <div className="form">
      {wheelEnd.repairs.map((repair) =>
        repair.id === draft?.repair.id ? (
          form
        ) : (
          <RepairLines key={repair.id} repair={repair} onChange={() => write(repair)} />
        ),
      )}
      {isNew ? form : null}
      {draft ? null : (
        <button type="button" className="button" onClick={() => write(emptyRepair(inspector))}>
          {REPAIR.add}
        </button>
      )}
    </div>
  );
}

function emptyRepair(by: string): Repair {
  return {
    id: crypto.randomUUID(),
    at: new Date().toISOString(),
    by,
    cause: null,
    work: '',
    parts: [],
    newAdjuster: null,
    adjustedByHand: false,
    setFreeStrokeMm: null,
  };
}

function RepairLines({ repair, onChange }: { readonly repair: Repair; readonly onChange: () => void }) {
  const unit = useLengthUnit();
  const { id, at, by, cause, work: done, parts, adjustedByHand, setFreeStrokeMm } = repair;
  return (
    <div className="repair">
      <p>
        <strong>{cause ? CAUSE_NAMES[cause] : REPAIR.heading}</strong>{' '}
        <span className="quiet">{REPAIR.by(by, dayText(at))}</span>
      </p>
      {done ? <p>{done}</p> : null}
      {parts.map((part) => (
        <p key={part} className="quiet">
          {part}
        </p>
      ))}
      {adjustedByHand ? <p className="look">{REPAIR.adjustedByHand}</p> : null}
      {setFreeStrokeMm === null ? null : (
        <p>{`${REPAIR.setFreeStroke} ${lengthText(setFreeStrokeMm, unit)}`}</p>
      )}
      <div className="row">
        <button type="button" className="button" onClick={onChange}>
          {REPAIR.change}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => work.act({ type: 'drop-line', list: 'repairs', id })}
        >
          {REPAIR.drop}
        </button>
      </div>
    </div>
  );
}
