import {
  LIMIT_SENSES,
  MOST_READING_MM,
  OTHER_QUANTITIES,
  type OtherReading,
} from '../../record/wheel-end.ts';
import { Choice } from '../parts/Choice.tsx';
import { FormFoot } from '../parts/FormFoot.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Select } from '../parts/Select.tsx';
import { TextField } from '../parts/TextField.tsx';
import { LIMIT_IS, OTHER, OTHER_NAMES } from '../words/wheel-end.ts';
import type { OtherDraft } from './drafts.ts';

type Props = {
  readonly draft: OtherDraft;
  readonly onChange: (draft: OtherDraft) => void;
  readonly onDone: (reading: OtherReading) => void;
  readonly onCancel: () => void;
};

/** Wear makes play grow and linings thin. */
const USUAL_LIMIT: Readonly<Record<OtherReading['what'], OtherReading['limitIs']>> = {
  'camshaft-play': 'greatest',
  'adjuster-end-play': 'greatest',
  'lining-thickness': 'least',
  'drum-diameter': 'greatest',
  other: 'greatest',
};

export function OtherReadingForm({ draft, onChange, onDone, onCancel }: Props) {
  const { what, name, valueMm, limitMm, limitIs, limitSource } = draft;
  const set = (changed: Partial<OtherDraft>) => onChange({ ...draft, ...changed });
  const isWhole = valueMm !== null && (what !== 'other' || name.trim() !== '');
  return (
    <div className="form boxed">
      <label className="field">
        <span>{OTHER.what}</span>
        <Select
          values={OTHER_QUANTITIES}
          names={OTHER_NAMES}
          value={what}
          onChange={(chosen) => chosen && set({ what: chosen, limitIs: USUAL_LIMIT[chosen] })}
        />
      </label>
      {what === 'other' ? (
        <TextField label={OTHER.name} value={name} onChange={(name) => set({ name })} />
      ) : null}
      <div className="pair">
        <LengthField
          label={OTHER.value}
          valueMm={valueMm}
          mostMm={MOST_READING_MM}
          onChange={(valueMm) => set({ valueMm })}
        />
        <LengthField
          label={OTHER.limit}
          valueMm={limitMm}
          mostMm={MOST_READING_MM}
          onChange={(limitMm) => set({ limitMm })}
        />
      </div>
      {limitMm === null ? (
        <p className="quiet">{OTHER.limitHint}</p>
      ) : (
        <>
          <fieldset>
            <legend className="quiet">{OTHER.limitIs}</legend>
            {LIMIT_SENSES.map((each) => (
              <Choice
                key={each}
                group="limit-is"
                label={LIMIT_IS[each]}
                checked={limitIs === each}
                onChange={() => set({ limitIs: each })}
              />
            ))}
          </fieldset>
          <TextField
            label={OTHER.limitSource}
            value={limitSource}
            onChange={(limitSource) => set({ limitSource })}
          />
        </>
      )}
      <FormFoot
        done={OTHER.done}
        disabled={!isWhole}
        onDone={() =>
          valueMm !== null &&
          onDone({
            id: crypto.randomUUID(),
            purpose: 'as-found',
            what,
            name: name.trim(),
            valueMm,
            limitMm,
            limitIs,
            limitSource: limitSource.trim(),
          })
        }
        onCancel={onCancel}
      />
    </div>
  );
}
