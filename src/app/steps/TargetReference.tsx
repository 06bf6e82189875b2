import type { References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { PrintLinks } from '../parts/PrintLinks.tsx';
import { TARGET } from '../words/target.ts';
import type { Current } from '../work/current.ts';
import { USUAL_TARGET } from '../work/usual-references.ts';
import { TargetSights } from './TargetSights.tsx';

/** The check line is nominally 100 mm: what is far from it was typed in another unit. */
const LEAST_CHECK_MM = 50;
const MOST_CHECK_MM = 200;

type Props = {
  readonly current: Current;
  readonly set: (changed: Pick<References, 'target'>) => void;
};

export function TargetReference({ current, set }: Props) {
  const { target } = current.measurement.references;
  return (
    <div className="ticked">
      <Choice
        label={TARGET.name}
        hint={TARGET.hint}
        checked={target !== null}
        onChange={(on) => set({ target: on ? USUAL_TARGET : null })}
      />
      <p className="print-links">
        {TARGET.print}:
        <PrintLinks page="printed-target" words={TARGET} plain />
      </p>
      {target ? (
        <>
          <TargetSights current={current} />
          <LengthField
            label={TARGET.check}
            leastMm={LEAST_CHECK_MM}
            mostMm={MOST_CHECK_MM}
            valueMm={target.checkMm}
            onChange={(checkMm) => checkMm && set({ target: { ...target, checkMm } })}
          />
          <p className="quiet">{TARGET.checkHint}</p>
          <Choice
            label={TARGET.unmoved}
            hint={TARGET.unmovedHint}
            checked={target.unmoved}
            onChange={(unmoved) => set({ target: { ...target, unmoved } })}
          />
          <Choice
            label={TARGET.touchesPin}
            hint={TARGET.touchesPinHint}
            checked={target.touchesPin}
            onChange={(touchesPin) => set({ target: { ...target, touchesPin } })}
          />
        </>
      ) : null}
    </div>
  );
}
