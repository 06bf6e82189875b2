import { isReadingOver } from '../../record/other-readings.ts';
import type { OtherReading, WheelEnd } from '../../record/wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { lengthText } from '../words/values.ts';
import { OTHER, OTHER_NAMES } from '../words/wheel-end.ts';
import { useDraft } from '../work/use-draft.ts';
import { draftNames, EMPTY_OTHER, otherDraftSchema } from './drafts.ts';
import { OtherReadingForm } from './OtherReadingForm.tsx';

export function OtherReadings({ wheelEnd }: { readonly wheelEnd: WheelEnd }) {
  const [draft, setDraft] = useDraft(draftNames(wheelEnd.id).other, otherDraftSchema);
  return (
    <div className="form">
      <ul className="ruled">
        {wheelEnd.otherReadings.map((reading) => (
          <OtherReadingLine key={reading.id} reading={reading} />
        ))}
      </ul>
      {draft ? (
        <OtherReadingForm
          draft={draft}
          onChange={setDraft}
          onDone={(line) => {
            work.act({ type: 'put-line', list: 'otherReadings', line });
            setDraft(null);
          }}
          onCancel={() => setDraft(null)}
        />
      ) : (
        <button type="button" className="button" onClick={() => setDraft(EMPTY_OTHER)}>
          {OTHER.add}
        </button>
      )}
    </div>
  );
}

function OtherReadingLine({ reading }: { readonly reading: OtherReading }) {
  const unit = useLengthUnit();
  const { id, what, name, valueMm, limitMm, limitSource } = reading;
  const isPast = isReadingOver(reading);
  // Play is given in thousandths of an inch by makers: a fraction would hide it.
  const fine = unit === 'fraction' ? 'decimal-inch' : unit;
  const judged = isPast ? OTHER.over : OTHER.within;
  return (
    <li className="line">
      <span>
        {`${what === 'other' ? name : OTHER_NAMES[what]} `}
        <strong>{lengthText(valueMm, fine)}</strong>
        <span className={isPast ? 'look hint' : 'quiet hint'}>
          {limitMm === null ? OTHER.noLimit : `${judged} ${lengthText(limitMm, fine)}, ${limitSource}`}
        </span>
      </span>
      <button
        type="button"
        className="button plain cross"
        aria-label={OTHER.drop}
        onClick={() => work.act({ type: 'drop-line', list: 'otherReadings', id })}
      >
        ×
      </button>
    </li>
  );
}
