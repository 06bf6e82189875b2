import { useState } from 'react';
import { MOST_REFERENCE_MM, type References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { REFERENCE } from '../words/steps.ts';
import { lengthText } from '../words/values.ts';
import { U_ARM_STAMPED_MM, USUAL_ARM_LENGTHS_MM } from '../work/usual-references.ts';

type Props = {
  readonly arm: References['armLength'];
  readonly set: (changed: Partial<References>) => void;
};

export function ArmReference({ arm, set }: Props) {
  const unit = useLengthUnit();
  const [wanted, setWanted] = useState(false);
  const take = (lengthMm: number | null) =>
    lengthMm && set({ armLength: { lengthMm, uLengthMm: U_ARM_STAMPED_MM } });
  const usual = USUAL_ARM_LENGTHS_MM.find((lengthMm) => lengthMm === arm?.lengthMm);
  return (
    <div className="ticked">
      <Choice
        label={REFERENCE.arm}
        hint={REFERENCE.armHint}
        checked={arm !== null || wanted}
        onChange={(on) => {
          setWanted(on);
          if (!on) set({ armLength: null });
        }}
      />
      {arm !== null || wanted ? (
        <fieldset>
          <legend className="quiet">{REFERENCE.armStamped}</legend>
          <div className="row lengths">
            {USUAL_ARM_LENGTHS_MM.map((lengthMm) => (
              <Choice
                key={lengthMm}
                group="arm-length"
                label={lengthText(lengthMm, unit)}
                checked={arm?.lengthMm === lengthMm}
                onChange={() => take(lengthMm)}
              />
            ))}
          </div>
          <LengthField
            label={REFERENCE.armOther}
            mostMm={MOST_REFERENCE_MM}
            valueMm={usual === undefined ? (arm?.lengthMm ?? null) : null}
            onChange={take}
          />
        </fieldset>
      ) : null}
    </div>
  );
}
