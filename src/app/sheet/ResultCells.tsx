import { decidingBound } from '../../finding/guard-band.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { boundText, FINDING, limitText, OUTCOMES } from '../words/findings.ts';
import { measuredLengthText } from '../words/values.ts';
import { Cell } from './Cell.tsx';
import { FindingBar } from './FindingBar.tsx';

type Props = {
  readonly assessment: ShownAssessment;
  readonly sights: MeasurementInput['overStrokeMark'];
};

/** Stroke, limit, finding and the bar: the cells that everything else is for. */
export function ResultCells({ assessment, sights }: Props) {
  const unit = useLengthUnit();
  const { measurement: measured, finding, shownStrokeMm: stroke } = assessment;
  const limits = finding.limit?.values ?? [];
  const seen = (['released', 'applied'] as const).filter((state) => sights[state]?.sight === 'seen');
  const decidable = stroke !== null && limits.length > 0;
  const bound = decidable ? decidingBound(finding.outcome, stroke) : null;
  return (
    <>
      <Cell label={TITLE_BLOCK.stroke} large={stroke !== null}>
        <output className={assessment.underWay ? 'under-way' : undefined} aria-busy={assessment.underWay}>
          {stroke ? measuredLengthText(stroke, unit) : measured.ok ? TITLE_BLOCK.notHeld : TITLE_BLOCK.notYet}
        </output>
      </Cell>
      <Cell label={TITLE_BLOCK.limit} large={limits.length > 0}>
        {limits.length === 0 ? TITLE_BLOCK.notYet : null}
        {limits.map((limit, index) => (
          <span key={limit.limitMm} className="limit">
            {index > 0 ? `${FINDING.or} ` : null}
            {limitText([limit], unit)}
          </span>
        ))}
      </Cell>
      <Cell label={TITLE_BLOCK.finding} size="whole">
        <span className={decidable ? 'outcome' : undefined} role="status">
          {decidable ? OUTCOMES[finding.outcome] : TITLE_BLOCK.notYet}
        </span>
        {bound ? <span className="bound">{boundText(bound, unit)}</span> : null}
        {seen.map((state) => (
          <span key={state} className="look">
            {FINDING.overStrokeSeen(state)}
          </span>
        ))}
        {stroke ? <FindingBar stroke={stroke} limitsMm={limits.map(({ limitMm }) => limitMm)} /> : null}
      </Cell>
    </>
  );
}
