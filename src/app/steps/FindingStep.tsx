import { findRuleSet } from '../../finding/rule-sets.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { measurementFailureText, measurementWarningText } from '../words/failures-measurement.ts';
import { FINDING, findingNoteText, limitSourceText, undecidedText } from '../words/findings.ts';
import type { Current } from '../work/current.ts';
import { AdviceLines } from './AdviceLines.tsx';
import { MeasuredValues } from './MeasuredValues.tsx';
import { WorstMark } from './WorstMark.tsx';

type Props = { readonly current: Current; readonly assessment: ShownAssessment };

export function FindingStep({ current, assessment }: Props) {
  const unit = useLengthUnit();
  const { measurement: measured, finding } = assessment;
  const ruleSet = findRuleSet(current.record.ruleSetId);
  if (!measured.ok && assessment.underWay) return <p>{FINDING.underWay}</p>;
  if (!measured.ok) return <p className="look">{measurementFailureText(measured.failure, unit)}</p>;
  const { warnings, fit } = measured.value;
  return (
    <>
      {finding.reasons.length > 0 ? (
        <div>
          <h3>{FINDING.why}</h3>
          {finding.reasons.map((reason) => (
            <p key={JSON.stringify(reason)}>{undecidedText(reason, unit)}</p>
          ))}
        </div>
      ) : null}
      {finding.notes.map((note) => (
        <p key={note.code} className="look">
          {findingNoteText(note, unit)}
        </p>
      ))}
      <MeasuredValues measurement={measured.value} />
      <AdviceLines current={current} />
      {fit.worstMark ? <WorstMark current={current} worst={fit.worstMark} /> : null}
      {warnings
        .filter(({ code }) => code !== 'measurement/mark-doubtful')
        .map((warning) => (
          <p key={warning.code} className="quiet">
            {measurementWarningText(warning, unit)}
          </p>
        ))}
      {finding.limit && ruleSet.ok ? (
        <div>
          <h3>{FINDING.source}</h3>
          {finding.limit.values.map((value) => (
            <p key={value.limitMm} className="quiet">
              {limitSourceText(value, ruleSet.value, unit)}
            </p>
          ))}
        </div>
      ) : null}
    </>
  );
}
