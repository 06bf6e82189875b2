import type { References } from '../../references/reference.ts';
import { PAPERS, type Paper } from '../../references/target-sheet.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { TARGET } from '../words/target.ts';
import type { Current } from '../work/current.ts';
import { LEAST_CHECK_MM, MOST_CHECK_MM } from '../work/length-bounds.ts';
import { USUAL_TARGET } from '../work/usual-references.ts';
import { TargetSights } from './TargetSights.tsx';

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
      <PrintLinks />
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

/** Pages of their own: a printer's dialog belongs to the browser, and the page at hand keeps its place. */
function PrintLinks() {
  return (
    <p className="print-links">
      {TARGET.print}:
      {(Object.keys(PAPERS) as Paper[]).map((paper) => (
        <a
          key={paper}
          className="button plain"
          href={`${import.meta.env.BASE_URL}printed-target-${paper}.svg`}
          target="_blank"
          rel="noopener"
        >
          {TARGET.papers[paper]}
          <span className="unseen"> ({TARGET.newTab})</span>
        </a>
      ))}
    </p>
  );
}
