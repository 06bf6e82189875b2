import type { DoubtfulMark } from '../../measurement/measurement.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { nameOf } from '../pictures/viewer-marks.ts';
import { work } from '../stores.ts';
import { STATE_NAMES, TITLE_BLOCK } from '../words/en.ts';
import { FINDING } from '../words/findings.ts';
import { type Current, viewOf } from '../work/current.ts';

type Props = { readonly current: Current; readonly worst: DoubtfulMark };

/** The mark that fits the others least, by name: a tap goes to it. */
export function WorstMark({ current, worst }: Props) {
  const unit = useLengthUnit();
  const view = viewOf(current.measurement, worst.state);
  const mark = view?.marks.find(({ id }) => id === worst.markId);
  if (!view || !mark) return null;
  return (
    <button
      type="button"
      className="button wide"
      onClick={() => {
        work.goTo(`marks-${worst.state}`);
        work.select(worst.markId);
      }}
    >
      {`${TITLE_BLOCK.worst}: ${nameOf(mark, view.marks, unit)}, ${STATE_NAMES[worst.state].toLowerCase()} (${FINDING.off(worst.standardisedResidual)})`}
    </button>
  );
}
