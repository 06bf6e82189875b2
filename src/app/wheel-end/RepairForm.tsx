import { CAUSES, type Cause } from '../../finding/causes.ts';
import { ADJUSTER_KINDS, type Repair } from '../../record/repair.ts';
import { Choice } from '../parts/Choice.tsx';
import { FormFoot } from '../parts/FormFoot.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Segments } from '../parts/Segments.tsx';
import { TextField } from '../parts/TextField.tsx';
import { CAUSE_NAMES } from '../words/causes.ts';
import { ADJUSTER_NAMES, REPAIR } from '../words/wheel-end.ts';
import type { RepairDraft } from './drafts.ts';

type Props = {
  readonly draft: RepairDraft;
  readonly onChange: (draft: RepairDraft) => void;
  readonly onDone: (repair: Repair) => void;
  readonly onCancel: () => void;
};

const MOST_FREE_STROKE_MM = 200;
const MOST_PARTS = 40;
const MOST_PART_LENGTH = 200;

export function RepairForm({ draft, onChange, onDone, onCancel }: Props) {
  const { repair, parts } = draft;
  const set = (changed: Partial<Repair>) => onChange({ ...draft, repair: { ...repair, ...changed } });
  const isEmpty =
    repair.cause === null && repair.work.trim() === '' && parts.trim() === '' && !repair.adjustedByHand;
  return (
    <div className="form boxed">
      <label className="field">
        <span>{REPAIR.cause}</span>
        <select
          value={repair.cause ?? ''}
          onChange={(event) => set({ cause: (event.target.value || null) as Cause | null })}
        >
          <option value="">{REPAIR.causeNone}</option>
          {CAUSES.map((cause) => (
            <option key={cause} value={cause}>
              {CAUSE_NAMES[cause]}
            </option>
          ))}
        </select>
      </label>
      <TextField
        label={REPAIR.work}
        rows={3}
        maxLength={4000}
        value={repair.work}
        onChange={(text) => set({ work: text })}
      />
      <TextField
        label={REPAIR.parts}
        rows={2}
        maxLength={4000}
        value={parts}
        onChange={(typed) => onChange({ ...draft, parts: typed })}
      />
      <Segments
        legend={REPAIR.newAdjuster}
        values={ADJUSTER_KINDS}
        names={ADJUSTER_NAMES}
        value={repair.newAdjuster}
        onChange={(newAdjuster) => set({ newAdjuster })}
      />
      <Choice
        label={REPAIR.adjustedByHand}
        checked={repair.adjustedByHand}
        onChange={(adjustedByHand) => set({ adjustedByHand })}
      />
      <LengthField
        label={REPAIR.setFreeStroke}
        valueMm={repair.setFreeStrokeMm}
        mostMm={MOST_FREE_STROKE_MM}
        onChange={(setFreeStrokeMm) => set({ setFreeStrokeMm })}
      />
      <FormFoot
        done={REPAIR.done}
        disabled={isEmpty}
        onDone={() => onDone({ ...repair, parts: partsOf(parts) })}
        onCancel={onCancel}
      />
    </div>
  );
}

function partsOf(text: string): readonly string[] {
  const lines = text.split('\n').map((line) => line.trim().slice(0, MOST_PART_LENGTH));
  return lines.filter((line) => line !== '').slice(0, MOST_PARTS);
}
