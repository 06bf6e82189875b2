import type { Measurement } from '../../measurement/measurement.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { chanceText, fitText, HOW_SURE, widenedText } from '../words/uncertainty.ts';
import { uText } from '../words/values.ts';
import type { Current } from '../work/current.ts';
import { BudgetTable } from './BudgetTable.tsx';
import { TrialsCheck } from './TrialsCheck.tsx';
import { ValuesTable } from './ValuesTable.tsx';
import { WorstMark } from './WorstMark.tsx';

type Props = {
  readonly current: Current;
  readonly assessment: ShownAssessment;
  readonly measurement: Measurement;
};

/** What stands behind the ±: do the marks agree, what the uncertainty is made of, and the check of it. */
export function HowSure({ current, assessment, measurement }: Props) {
  const { fit, warnings, strokeMm } = measurement;
  const doubtful = warnings.some(({ code }) => code === 'measurement/mark-doubtful');
  return (
    <section className="how-sure" aria-labelledby="how-sure">
      <h3 id="how-sure">{HOW_SURE.heading}</h3>
      <p>{fitText(fit)}</p>
      {fit.worstMark ? <WorstMark current={current} worst={fit.worstMark} doubtful={doubtful} /> : null}
      <BudgetTable strokeMm={strokeMm} />
      <TrialsCheck current={current} assessment={assessment} measurement={measurement} />
      <FitNumbers measurement={measurement} />
    </section>
  );
}

function FitNumbers({ measurement: { fit, strokeMm } }: { readonly measurement: Measurement }) {
  const rows = [
    [HOW_SURE.u, uText(strokeMm.u)],
    [HOW_SURE.chiSquare, fit.chiSquare.toFixed(1)],
    [HOW_SURE.expected, fit.degreesOfFreedom.toFixed(1)],
    [HOW_SURE.chance, chanceText(fit.pValue)],
    [HOW_SURE.widened, widenedText(fit.inflation)],
    [HOW_SURE.worst, fit.worstMark?.standardisedResidual.toFixed(1)],
  ] as const;
  return (
    <details>
      <summary>{HOW_SURE.numbers}</summary>
      <ValuesTable rows={rows} />
    </details>
  );
}
