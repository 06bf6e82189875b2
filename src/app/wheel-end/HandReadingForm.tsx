import { mmFromInches } from '../../basics/units.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import { HAND_QUANTITIES, type HandReading, MOST_READING_MM } from '../../record/wheel-end.ts';
import { Choice } from '../parts/Choice.tsx';
import { FormFoot } from '../parts/FormFoot.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Segments } from '../parts/Segments.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { lengthText } from '../words/values.ts';
import { HAND } from '../words/wheel-end.ts';
import type { HandDraft } from './drafts.ts';

type Props = {
  readonly purpose: Purpose;
  readonly draft: HandDraft;
  readonly onChange: (draft: HandDraft) => void;
  readonly onDone: (reading: HandReading) => void;
  readonly onCancel: () => void;
};

const GRADUATIONS_MM = [mmFromInches(1 / 16), mmFromInches(1 / 8), 1] as const;

/** Nothing is entered before both readings are there: half a reading would say a stroke that nobody read. */
export function HandReadingForm({ purpose, draft, onChange, onDone, onCancel }: Props) {
  const unit = useLengthUnit();
  const { quantity, isDifference, releasedMm, appliedMm, graduationMm } = draft;
  const set = (changed: Partial<HandDraft>) => onChange({ ...draft, ...changed });
  const released = isDifference ? 0 : releasedMm;
  const isBackwards = released !== null && appliedMm !== null && appliedMm < released;
  const isWhole = released !== null && appliedMm !== null && !isBackwards;
  return (
    <div className="form boxed">
      <Segments
        legend={HAND.quantity}
        values={HAND_QUANTITIES}
        names={HAND}
        value={quantity}
        onChange={(chosen) => chosen && set({ quantity: chosen })}
      />
      <fieldset>
        <legend className="quiet">{HAND.way}</legend>
        <Choice
          group="hand-way"
          label={HAND.two}
          checked={!isDifference}
          onChange={() => set({ isDifference: false })}
        />
        <Choice
          group="hand-way"
          label={HAND.one}
          checked={isDifference}
          onChange={() => set({ isDifference: true })}
        />
      </fieldset>
      <div className="pair">
        {isDifference ? null : (
          <LengthField
            label={HAND.released}
            valueMm={releasedMm}
            mostMm={MOST_READING_MM}
            onChange={(releasedMm) => set({ releasedMm })}
          />
        )}
        <LengthField
          label={appliedLabel(isDifference, quantity)}
          valueMm={appliedMm}
          mostMm={MOST_READING_MM}
          onChange={(appliedMm) => set({ appliedMm })}
        />
      </div>
      {isBackwards ? <p className="look">{HAND.order}</p> : null}
      <fieldset>
        <legend className="quiet">{HAND.graduation}</legend>
        {GRADUATIONS_MM.map((each) => (
          <Choice
            key={each}
            group="graduation"
            label={lengthText(each, each === 1 ? 'mm' : unit === 'mm' ? 'fraction' : unit)}
            checked={graduationMm === each}
            onChange={() => set({ graduationMm: each })}
          />
        ))}
      </fieldset>
      <FormFoot
        done={HAND.done}
        disabled={!isWhole}
        onDone={() =>
          isWhole &&
          onDone({
            id: crypto.randomUUID(),
            purpose,
            quantity,
            releasedMm: isDifference ? null : releasedMm,
            appliedMm,
            graduationMm,
          })
        }
        onCancel={onCancel}
      />
    </div>
  );
}

function appliedLabel(isDifference: boolean, quantity: HandReading['quantity']): string {
  if (isDifference) return HAND.difference;
  return quantity === 'stroke' ? HAND.applied : HAND.pulled;
}
