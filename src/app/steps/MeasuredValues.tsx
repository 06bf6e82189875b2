import type { Measurement } from '../../measurement/measurement.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { TITLE_BLOCK } from '../words/en.ts';
import { FINDING } from '../words/findings.ts';
import { measuredAngleText, measuredLengthText } from '../words/values.ts';

export function MeasuredValues({ measurement }: { readonly measurement: Measurement }) {
  const unit = useLengthUnit();
  const { straightLineChangeMm, freeStrokeMm, armAngleReleasedRad, armAngleAppliedRad } = measurement;
  const rows = [
    [TITLE_BLOCK.straight, measuredLengthText(straightLineChangeMm, unit)],
    [TITLE_BLOCK.freeStroke, freeStrokeMm && measuredLengthText(freeStrokeMm, unit)],
    [TITLE_BLOCK.angleReleased, armAngleReleasedRad && measuredAngleText(armAngleReleasedRad)],
    [TITLE_BLOCK.angleApplied, armAngleAppliedRad && measuredAngleText(armAngleAppliedRad)],
  ] as const;
  return (
    <table className="values">
      <caption className="quiet">{FINDING.confidence}</caption>
      <tbody>
        {rows.map(([name, text]) =>
          text ? (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{text}</td>
            </tr>
          ) : null,
        )}
      </tbody>
    </table>
  );
}
