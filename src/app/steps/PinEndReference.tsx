import { useState } from 'react';
import { MOST_PIN_END_MM, type References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { REFERENCE } from '../words/steps.ts';
import { U_PIN_END_MM } from '../work/usual-references.ts';

type Props = {
  readonly pinEnd: References['pinEnd'];
  readonly set: (changed: Pick<References, 'pinEnd'>) => void;
};

export function PinEndReference({ pinEnd, set }: Props) {
  const [wanted, setWanted] = useState(false);
  return (
    <div className="ticked">
      <Choice
        label={REFERENCE.pinEnd}
        hint={REFERENCE.pinEndHint}
        checked={pinEnd !== null || wanted}
        onChange={(on) => {
          setWanted(on);
          if (!on) set({ pinEnd: null });
        }}
      />
      {pinEnd !== null || wanted ? (
        <LengthField
          label={REFERENCE.pinEndLength}
          mostMm={MOST_PIN_END_MM}
          valueMm={pinEnd?.outMm ?? null}
          onChange={(outMm) => set({ pinEnd: outMm === null ? null : { outMm, uOutMm: U_PIN_END_MM } })}
        />
      ) : null}
    </div>
  );
}
