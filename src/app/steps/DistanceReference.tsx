import { useState } from 'react';
import { MOST_REFERENCE_MM, type References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { REFERENCE } from '../words/steps.ts';
import { U_DISTANCE_MM } from '../work/usual-references.ts';

type Props = {
  readonly distance: References['distance'];
  readonly set: (changed: Partial<References>) => void;
};

export function DistanceReference({ distance, set }: Props) {
  const [wanted, setWanted] = useState(false);
  return (
    <div className="ticked">
      <Choice
        label={REFERENCE.distance}
        hint={REFERENCE.distanceHint}
        checked={distance !== null || wanted}
        onChange={(on) => {
          setWanted(on);
          if (!on) set({ distance: null });
        }}
      />
      {distance !== null || wanted ? (
        <LengthField
          label={REFERENCE.distanceLength}
          mostMm={MOST_REFERENCE_MM}
          valueMm={distance?.distanceMm ?? null}
          onChange={(distanceMm) =>
            distanceMm && set({ distance: { distanceMm, uDistanceMm: U_DISTANCE_MM } })
          }
        />
      ) : null}
    </div>
  );
}
