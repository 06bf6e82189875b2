import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import type { Assessment } from '../../record/results.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { faultsOfPicture } from '../quality/faults-of-picture.ts';
import { qualityLooks } from '../quality/quality-store.ts';
import { qualityOf, usePictureQuality } from '../quality/use-picture-quality.ts';
import { STATE_NAMES } from '../words/en.ts';
import { pictureFaultText, QUALITY } from '../words/quality.ts';
import { type Current, viewOf } from '../work/current.ts';

type Props = {
  readonly current: Current;
  readonly assessment: Assessment;
  readonly states: readonly BrakeState[];
};

/** What would make the pictures better, before time goes into marks. It asks for nothing and holds nothing up. */
export function PictureAdvice({ current, assessment, states }: Props) {
  const unit = useLengthUnit();
  usePictureQuality(current);
  const looks = useStore(qualityLooks, (state) => state.searches);
  const lines = states.flatMap((state) => {
    const view = viewOf(current.measurement, state);
    if (!view) return [];
    return faultsOfPicture(view, qualityOf(view, looks), assessment).map((fault) => ({ state, fault }));
  });
  if (lines.length === 0) return null;
  return (
    <section aria-label={QUALITY.heading}>
      <div role="status">
        <ul className="ruled">
          {lines.map(({ state, fault }) => (
            <li key={`${state} ${fault.code}`}>
              <p>
                {states.length > 1 ? <strong>{STATE_NAMES[state]}: </strong> : null}
                {pictureFaultText(fault, unit)}
              </p>
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}
