import type { PurposeResults } from '../../record/purpose-results.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { measuredAngleText, measuredLengthText } from '../words/values.ts';
import { WHEEL_END } from '../words/wheel-end.ts';

/** What came with the stroke, each with its U. */
export function StrokeLines({ results }: { readonly results: PurposeResults }) {
  const unit = useLengthUnit();
  const { measurement, freeStrokeMm, powerStrokeMm, differenceMm } = results;
  const measured = measurement?.assessment?.measurement;
  const angles = measured?.ok ? measured.value : null;
  const lines = [
    [TITLE_BLOCK.freeStroke, freeStrokeMm && measuredLengthText(freeStrokeMm, unit)],
    [WHEEL_END.powerStroke, powerStrokeMm && measuredLengthText(powerStrokeMm, unit)],
    [WHEEL_END.difference, differenceMm && measuredLengthText(differenceMm, unit)],
    [TITLE_BLOCK.angleReleased, angles?.armAngleReleasedRad && measuredAngleText(angles.armAngleReleasedRad)],
    [TITLE_BLOCK.angleApplied, angles?.armAngleAppliedRad && measuredAngleText(angles.armAngleAppliedRad)],
  ] as const;
  return (
    <dl className="value-lines">
      {lines.map(([name, value]) =>
        value ? (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ) : null,
      )}
    </dl>
  );
}
