import { useState } from 'react';
import type { OtherReading } from '../../record/wheel-end.ts';
import { Choice } from '../parts/Choice.tsx';
import { FormFoot } from '../parts/FormFoot.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { TextField } from '../parts/TextField.tsx';
import { LIMIT_IS, OTHER, OTHER_NAMES } from '../words/wheel-end.ts';

type Props = {
  readonly onDone: (reading: OtherReading) => void;
  readonly onCancel: () => void;
};

const MOST_MM = 1000;
/** Wear makes play grow and linings thin. */
const USUAL_LIMIT: Readonly<Record<OtherReading['what'], OtherReading['limitIs']>> = {
  'camshaft-play': 'greatest',
  'adjuster-end-play': 'greatest',
  'lining-thickness': 'least',
  'drum-diameter': 'greatest',
  other: 'greatest',
};
const WHATS = Object.keys(OTHER_NAMES) as OtherReading['what'][];

export function OtherReadingForm({ onDone, onCancel }: Props) {
  const [what, setWhat] = useState<OtherReading['what']>('camshaft-play');
  const [name, setName] = useState('');
  const [valueMm, setValue] = useState<number | null>(null);
  const [limitMm, setLimit] = useState<number | null>(null);
  const [limitIs, setLimitIs] = useState(USUAL_LIMIT[what]);
  const [limitSource, setSource] = useState('');
  const isWhole = valueMm !== null && (what !== 'other' || name.trim() !== '');
  return (
    <div className="form boxed">
      <label className="field">
        <span>{OTHER.what}</span>
        <select
          value={what}
          onChange={(event) => {
            const chosen = event.target.value as OtherReading['what'];
            setWhat(chosen);
            setLimitIs(USUAL_LIMIT[chosen]);
          }}
        >
          {WHATS.map((each) => (
            <option key={each} value={each}>
              {OTHER_NAMES[each]}
            </option>
          ))}
        </select>
      </label>
      {what === 'other' ? <TextField label={OTHER.name} value={name} onChange={setName} /> : null}
      <div className="pair">
        <LengthField label={OTHER.value} valueMm={valueMm} mostMm={MOST_MM} onChange={setValue} />
        <LengthField label={OTHER.limit} valueMm={limitMm} mostMm={MOST_MM} onChange={setLimit} />
      </div>
      {limitMm === null ? (
        <p className="quiet">{OTHER.limitHint}</p>
      ) : (
        <>
          <fieldset>
            <legend className="quiet">{OTHER.limitIs}</legend>
            {(['greatest', 'least'] as const).map((each) => (
              <Choice
                key={each}
                group="limit-is"
                label={LIMIT_IS[each]}
                checked={limitIs === each}
                onChange={() => setLimitIs(each)}
              />
            ))}
          </fieldset>
          <TextField label={OTHER.limitSource} value={limitSource} onChange={setSource} />
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
