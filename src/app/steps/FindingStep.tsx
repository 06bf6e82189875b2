import { findRuleSet } from '../../finding/rule-sets.ts';
import type { MeasurementWarning } from '../../measurement/measurement.ts';
import { conditionNotes } from '../../record/condition-notes.ts';
import { playedClipsOf } from '../../record/played-clips.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { ConditionsSaid } from '../parts/ConditionsSaid.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { measurementFailureText, measurementWarningText } from '../words/failures-measurement.ts';
import { FINDING, findingNoteText, limitSourceText, undecidedText } from '../words/findings.ts';
import { playedText } from '../words/played.ts';
import type { Current } from '../work/current.ts';
import { decidedAt, mendedAt } from '../work/mended-at.ts';
import { AdviceLines } from './AdviceLines.tsx';
import { FollowedClip } from './FollowedClip.tsx';
import { GoToStep } from './GoToStep.tsx';
import { HowSure } from './HowSure.tsx';
import { MeasuredValues } from './MeasuredValues.tsx';

type Props = { readonly current: Current; readonly assessment: ShownAssessment };

/** Warnings that 'How sure' has said in its own words. */
const SAID_ABOVE: readonly MeasurementWarning['code'][] = [
  'measurement/mark-doubtful',
  'measurement/marks-disagree',
];

export function FindingStep({ current, assessment }: Props) {
  const unit = useLengthUnit();
  const { measurement: measured, finding } = assessment;
  const ruleSet = findRuleSet(current.record.ruleSetId);
  if (!measured.ok && assessment.underWay) return <p>{FINDING.underWay}</p>;
  if (!measured.ok)
    return (
      <>
        <p className="look">{measurementFailureText(measured.failure, unit)}</p>
        <GoToStep step={mendedAt(measured.failure)} />
      </>
    );
  const { warnings } = measured.value;
  const conditions = conditionNotes(current.record.conditions, ruleSet.ok ? ruleSet.value : null);
  const { shownStrokeMm } = assessment;
  const decided = decidedAt(finding);
  const played = playedClipsOf(current.record, current.measurement);
  return (
    <>
      {shownStrokeMm ? null : <p className="look">{FINDING.notHeld}</p>}
      {finding.reasons.length > 0 ? (
        <div className="said-lines">
          <h3>{FINDING.why}</h3>
          {finding.reasons.map((reason) => (
            <p key={JSON.stringify(reason)}>{undecidedText(reason, unit)}</p>
          ))}
        </div>
      ) : null}
      {decided ? <GoToStep step={decided} /> : null}
      {finding.notes.map((note) => (
        <p key={note.code} className="look">
          {findingNoteText(note, unit)}
        </p>
      ))}
      {played.length > 0 ? <p>{playedText(played)}</p> : null}
      <ConditionsSaid notes={conditions} />
      <FollowedClip current={current} />
      {shownStrokeMm ? <MeasuredValues measurement={measured.value} /> : null}
      <AdviceLines current={current} />
      <HowSure current={current} assessment={assessment} measurement={measured.value} />
      {warnings
        .filter(({ code }) => !SAID_ABOVE.includes(code))
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
