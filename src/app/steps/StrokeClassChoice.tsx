import type { Chamber } from '../../finding/chamber.ts';
import { chamberSizes } from '../../finding/chamber-sizes.ts';
import type { RuleSet } from '../../finding/rule-set.ts';
import { Choice } from '../parts/Choice.tsx';
import { PortDrawing } from '../sheet/PortDrawing.tsx';
import { CHAMBER } from '../words/chambers.ts';

type Props = {
  readonly chamber: Chamber;
  readonly ruleSet: RuleSet;
  readonly onChange: (chamber: Chamber) => void;
};

/** Asked only where the table knows a long-stroke chamber of this type. */
export function StrokeClassChoice({ chamber, ruleSet, onChange }: Props) {
  const size = chamberSizes(ruleSet).find(
    ({ family, type }) => family === chamber.family && type === chamber.type,
  );
  if (!size?.strokeClasses.includes('long')) return null;
  return (
    <fieldset className="ruled-group">
      <legend>{CHAMBER.strokeClass}</legend>
      <div className="drawn-choices explained">
        {size.strokeClasses.map((strokeClass) => (
          <Choice
            key={strokeClass}
            group="stroke-class"
            label={
              <>
                <PortDrawing square={strokeClass === 'long'} />
                {CHAMBER[strokeClass]}
              </>
            }
            hint={strokeClass === 'long' ? CHAMBER.longHint : CHAMBER.standardHint}
            checked={chamber.strokeClass === strokeClass}
            onChange={() => onChange({ ...chamber, strokeClass })}
          />
        ))}
      </div>
      <p className="quiet">{CHAMBER.proof}</p>
    </fieldset>
  );
}
