import { CHAMBER_FAMILIES, type ChamberFamily } from '../../finding/chamber.ts';
import { Choice } from '../parts/Choice.tsx';
import { FamilyDrawing } from '../sheet/FamilyDrawing.tsx';
import { CHAMBER } from '../words/chambers.ts';
import { FAMILY_NAMES } from '../words/limits.ts';

type Props = {
  readonly family: ChamberFamily | null;
  readonly onChange: (family: ChamberFamily) => void;
};

export function FamilyChoice({ family: chosen, onChange }: Props) {
  return (
    <fieldset className="ruled-group">
      <legend>{CHAMBER.family}</legend>
      <div className="drawn-choices">
        {CHAMBER_FAMILIES.map((family) => (
          <Choice
            key={family}
            group="chamber-family"
            label={
              <>
                <FamilyDrawing family={family} />
                {FAMILY_NAMES[family]}
              </>
            }
            checked={chosen === family}
            onChange={() => onChange(family)}
          />
        ))}
      </div>
    </fieldset>
  );
}
