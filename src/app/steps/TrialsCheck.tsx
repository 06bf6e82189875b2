import { ok } from '../../basics/result.ts';
import type { Measurement } from '../../measurement/measurement.ts';
import { USUAL_TRIALS } from '../../measurement/monte-carlo-joined.ts';
import { widenedBy } from '../../measurement/monte-carlo-widened.ts';
import { findingFor } from '../../record/results.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { useTrials } from '../measuring/use-trials.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TRIALS, trialsFailureText } from '../words/uncertainty.ts';
import type { Current } from '../work/current.ts';
import { TrialsResult } from './TrialsResult.tsx';

type Props = {
  readonly current: Current;
  readonly assessment: ShownAssessment;
  readonly measurement: Measurement;
};

/** The uncertainty checked by trials, on request: they take seconds. */
export function TrialsCheck({ current, assessment, measurement }: Props) {
  const unit = useLengthUnit();
  const { run, begin, stop } = useTrials(current);
  if (!run)
    return (
      <div className="trials">
        <button type="button" className="button wide" disabled={assessment.underWay} onClick={begin}>
          {TRIALS.check(USUAL_TRIALS)}
        </button>
        <p className="quiet">{TRIALS.why}</p>
      </div>
    );
  if (!run.answer)
    return (
      <div className="trials">
        <p className="trials-running">
          <progress aria-label={TRIALS.heading} max={USUAL_TRIALS} value={run.done} />
          <span>{TRIALS.running(run.done, USUAL_TRIALS)}</span>
        </p>
        <button type="button" className="button wide" onClick={stop}>
          {TRIALS.stop}
        </button>
      </div>
    );
  if (!run.answer.ok)
    return (
      <p className="look" role="status">
        {trialsFailureText(run.answer.failure, unit)}
      </p>
    );
  const trials = run.answer.value;
  const { record, wheelEnd } = current;
  const widened = findingFor(record, wheelEnd, current.measurement, ok(widenedBy(measurement, trials)));
  return (
    <TrialsResult
      measurement={measurement}
      trials={trials}
      limitsMm={(assessment.finding.limit?.values ?? []).map(({ limitMm }) => limitMm)}
      otherOutcome={widened.outcome === assessment.finding.outcome ? null : widened.outcome}
    />
  );
}
