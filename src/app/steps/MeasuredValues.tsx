import type { Measurement } from '../../measurement/measurement.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { FINDING } from '../words/findings.ts';
import { measuredAngleText, measuredLengthText } from '../words/values.ts';
import { ValuesTable } from './ValuesTable.tsx';

export function MeasuredValues({ measurement }: { readonly measurement: Measurement }) {
  const unit = useLengthUnit();
  const { straightLineChangeMm, freeStrokeMm, armAngleReleasedRad, armAngleAppliedRad } = measurement;
  const rows = [
    [TITLE_BLOCK.straight, measuredLengthText(straightLineChangeMm, unit)],
    [TITLE_BLOCK.freeStroke, freeStrokeMm && measuredLengthText(freeStrokeMm, unit)],
    [TITLE_BLOCK.angleReleased, armAngleReleasedRad && measuredAngleText(armAngleReleasedRad)],
    [TITLE_BLOCK.angleApplied, armAngleAppliedRad && measuredAngleText(armAngleAppliedRad)],
  ] as const;
  return <ValuesTable caption={`${FINDING.confidence}. ${FINDING.barRead}`} rows={rows} />;
}
