import { CAUSES } from '../../finding/causes.ts';
import { LINE_CHARACTERS } from '../../record/parts.ts';
import { ADJUSTER_KINDS, MOST_FREE_STROKE_MM, MOST_PARTS, type Repair } from '../../record/repair.ts';
import { Choice } from '../parts/Choice.tsx';
import { FormFoot } from '../parts/FormFoot.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Segments } from '../parts/Segments.tsx';
import { Select } from '../parts/Select.tsx';
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

export function RepairForm({ draft, onChange, onDone, onCancel }: Props) {
  const { repair, parts } = draft;
  const set = (changed: Partial<Repair>) => onChange({ ...draft, repair: { ...repair, ...changed } });
  const isEmpty =
    repair.cause === null && repair.work.trim() === '' && parts.trim() === '' && !repair.adjustedByHand;
  return (
    <div className="form boxed">
      <label className="field">
        <span>{REPAIR.cause}</span>
        <Select
          none={REPAIR.causeNone}
          values={CAUSES}
          names={CAUSE_NAMES}
          value={repair.cause}
          onChange={(cause) => set({ cause })}
        />
      </label>
      <TextField label={REPAIR.work} rows={3} value={repair.work} onChange={(text) => set({ work: text })} />
      <TextField
        label={REPAIR.parts}
        rows={2}
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
  const lines = text.split('\n').map((line) => line.trim().slice(0, LINE_CHARACTERS));
  return lines.filter((line) => line !== '').slice(0, MOST_PARTS);
}
