import { type ChamberFamily, TYPE_CHARACTERS } from '../../finding/chamber.ts';
import { chamberSizes } from '../../finding/chamber-sizes.ts';
import type { RuleSet } from '../../finding/rule-set.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { CHAMBER } from '../words/chambers.ts';
import { diameterText } from '../words/values.ts';

type Props = {
  readonly family: ChamberFamily;
  /** Empty until one is chosen. */
  readonly type: string;
  readonly ruleSet: RuleSet;
  readonly onChange: (type: string) => void;
};

export function TypeChoice({ family, type, ruleSet, onChange }: Props) {
  const unit = useLengthUnit();
  if (family === 'unlisted')
    return (
      <label className="field">
        <span>{CHAMBER.typeUnlisted}</span>
        <input
          type="text"
          maxLength={TYPE_CHARACTERS}
          value={type}
          onChange={(event) => onChange(event.target.value)}
        />
      </label>
    );
  const sizes = chamberSizes(ruleSet).filter((size) => size.family === family);
  return (
    <label className="field">
      <span>{CHAMBER.type}</span>
      <select value={type} onChange={(event) => onChange(event.target.value)}>
        <option value="" disabled>
          {CHAMBER.typeChoose}
        </option>
        {sizes.map(({ type: name, outsideDiameterIn }) => (
          <option key={name} value={name}>
            {`${name}   ⌀ ${diameterText(outsideDiameterIn, unit)}`}
          </option>
        ))}
      </select>
    </label>
  );
}
