import type { DoubtfulMark } from '../../measurement/measurement.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { nameOf } from '../pictures/viewer-marks.ts';
import { work } from '../stores.ts';
import { STATE_NAMES } from '../words/en.ts';
import { WORST_MARK } from '../words/uncertainty.ts';
import { type Current, viewOf } from '../work/current.ts';

type Props = {
  readonly current: Current;
  readonly worst: DoubtfulMark;
  /** It contradicts the others: ringed on the picture, and here with the same ring. */
  readonly doubtful: boolean;
};

/** Within its own spread a mark fits: naming it would send the person to look for nothing. */
const FITS = 1;

/** The mark that fits the others least, by name: a tap brings it close on its picture. */
export function WorstMark({ current, worst, doubtful }: Props) {
  const unit = useLengthUnit();
  const view = viewOf(current.measurement, worst.state);
  const mark = view?.marks.find(({ id }) => id === worst.markId);
  const fits = !doubtful && Math.abs(worst.standardisedResidual) < FITS;
  if (!view || !mark || fits) return null;
  const name = `${nameOf(mark, view.marks, unit)}, ${STATE_NAMES[worst.state].toLowerCase()}`;
  return (
    <div className={doubtful ? 'worst-mark doubtful' : 'worst-mark'}>
      {doubtful ? <p className="look">{WORST_MARK.lookAgain}</p> : null}
      <button
        type="button"
        className="button wide"
        onClick={() => {
          work.goTo(`marks-${worst.state}`);
          work.select(worst.markId);
          // On a phone the pictures stand above all that is read.
          scrollTo({ top: 0 });
        }}
      >
        {doubtful ? (
          <svg viewBox="-24 -24 48 48" aria-hidden="true">
            <circle r="20" />
            <path d="M-11 0H-4M4 0H11M0-11V-4M0 4V11" />
          </svg>
        ) : null}
        <span>{`${WORST_MARK.least}: ${name} (${WORST_MARK.off(worst.standardisedResidual)})`}</span>
      </button>
    </div>
  );
}
