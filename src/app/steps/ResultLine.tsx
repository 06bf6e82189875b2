import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { OUTCOMES } from '../words/findings.ts';
import { measuredLengthText } from '../words/values.ts';

/** The result in a line, where the title block is out of sight while marks are moved. */
export function ResultLine({ assessment }: { readonly assessment: ShownAssessment }) {
  const unit = useLengthUnit();
  const { shownStrokeMm, finding } = assessment;
  if (!shownStrokeMm) return null;
  return (
    <p className="result-line">
      {TITLE_BLOCK.stroke} <strong>{measuredLengthText(shownStrokeMm, unit)}</strong>.{' '}
      {finding.limit ? OUTCOMES[finding.outcome] : null}
    </p>
  );
}
