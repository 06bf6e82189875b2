import type { Outcome } from '../../finding/guard-band.ts';
import type { Measured } from '../../measurement/measured.ts';
import type { Measurement } from '../../measurement/measurement.ts';
import type { TrialResult, Trials } from '../../measurement/monte-carlo-joined.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TrialsHistogram } from '../sheet/TrialsHistogram.tsx';
import { TITLE_BLOCK } from '../words/en.ts';
import {
  otherOutcomeText,
  strokeTrialsText,
  TRIALS,
  trialsAngleText,
  trialsLengthText,
} from '../words/uncertainty.ts';
import { measuredAngleText, measuredLengthText } from '../words/values.ts';

type Props = {
  readonly measurement: Measurement;
  readonly trials: Trials;
  readonly limitsMm: readonly number[];
  /** What the finding would be with the larger uncertainty, where that is another. */
  readonly otherOutcome: Outcome | null;
};

/** Beside the stated values those of the trials, and which to rely on where they do not agree. */
export function TrialsResult({ measurement, trials, limitsMm, otherOutcome }: Props) {
  const unit = useLengthUnit();
  const { strokeMm, freeStrokeMm, armAngleReleasedRad, armAngleAppliedRad } = measurement;
  const { results, lost, asked } = trials;
  if (!results.strokeMm) return null;
  const length = (stated: Measured | null, drawn: TrialResult | null) =>
    stated && drawn && ([measuredLengthText(stated, unit), trialsLengthText(stated, drawn, unit)] as const);
  const angle = (stated: Measured | null, drawn: TrialResult | null) =>
    stated && drawn && ([measuredAngleText(stated), trialsAngleText(stated, drawn)] as const);
  const rows = [
    [TITLE_BLOCK.stroke, length(strokeMm, results.strokeMm), results.strokeMm],
    [TITLE_BLOCK.freeStroke, length(freeStrokeMm, results.freeStrokeMm), results.freeStrokeMm],
    [
      TITLE_BLOCK.angleReleased,
      angle(armAngleReleasedRad, results.armAngleReleasedRad),
      results.armAngleReleasedRad,
    ],
    [
      TITLE_BLOCK.angleApplied,
      angle(armAngleAppliedRad, results.armAngleAppliedRad),
      results.armAngleAppliedRad,
    ],
  ] as const;
  return (
    <div className="trials">
      <p role="status" className={results.strokeMm.agreement.agree ? undefined : 'look'}>
        {strokeTrialsText(strokeMm, results.strokeMm, unit)}
      </p>
      {otherOutcome ? <p className="look">{otherOutcomeText(otherOutcome)}</p> : null}
      <TrialsHistogram stated={strokeMm} result={results.strokeMm} limitsMm={limitsMm} />
      <table className="values trials-values">
        <thead>
          <tr>
            <th scope="col">{TRIALS.quantity}</th>
            <th scope="col">{TRIALS.stated}</th>
            <th scope="col">{TRIALS.byTrials}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, texts, result]) =>
            texts ? (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{texts[0]}</td>
                <td className={result?.agreement.agree ? undefined : 'look'}>{texts[1]}</td>
              </tr>
            ) : null,
          )}
        </tbody>
      </table>
      {lost > 0 ? <p className="quiet">{TRIALS.lost(lost, asked)}</p> : null}
    </div>
  );
}
