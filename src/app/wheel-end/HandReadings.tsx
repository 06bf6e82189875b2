import { handLength } from '../../record/hand-results.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import type { HandReading, WheelEnd } from '../../record/wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { lengthText, measuredLengthText } from '../words/values.ts';
import { HAND } from '../words/wheel-end.ts';
import { useDraft } from '../work/use-draft.ts';
import { draftNames, EMPTY_HAND, handDraftSchema } from './drafts.ts';
import { HandReadingForm } from './HandReadingForm.tsx';

type Props = { readonly wheelEnd: WheelEnd; readonly purpose: Purpose };

export function HandReadings({ wheelEnd, purpose }: Props) {
  const [draft, setDraft] = useDraft(draftNames(wheelEnd.id).hand(purpose), handDraftSchema);
  const readings = wheelEnd.handReadings.filter((reading) => reading.purpose === purpose);
  return (
    <div className="form">
      <ul className="ruled">
        {readings.map((reading) => (
          <HandReadingLine key={reading.id} reading={reading} />
        ))}
      </ul>
      {draft ? (
        <HandReadingForm
          purpose={purpose}
          draft={draft}
          onChange={setDraft}
          onDone={(line) => {
            work.act({ type: 'put-line', list: 'handReadings', line });
            setDraft(null);
          }}
          onCancel={() => setDraft(null)}
        />
      ) : (
        <button type="button" className="button" onClick={() => setDraft(EMPTY_HAND)}>
          {HAND.add}
        </button>
      )}
    </div>
  );
}

function HandReadingLine({ reading }: { readonly reading: HandReading }) {
  const unit = useLengthUnit();
  const { id, quantity, releasedMm, appliedMm } = reading;
  const length = handLength(reading);
  const value = length.ok
    ? measuredLengthText(length.value, unit)
    : lengthText(appliedMm - (releasedMm ?? 0), unit);
  return (
    <li className="line">
      <span>
        {HAND.text(quantity, value)}
        {releasedMm === null ? null : (
          <span className="quiet hint">
            {HAND.between(lengthText(releasedMm, unit), lengthText(appliedMm, unit))}
          </span>
        )}
      </span>
      <button
        type="button"
        className="button plain cross"
        aria-label={HAND.drop}
        onClick={() => work.act({ type: 'drop-line', list: 'handReadings', id })}
      >
        ×
      </button>
    </li>
  );
}
