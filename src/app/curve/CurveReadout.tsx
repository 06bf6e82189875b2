import type { LengthUnit } from '../../basics/length-text.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { Cell } from '../sheet/Cell.tsx';
import { angleText, CURVE, phaseText, secondsText, uAngleText, uLengthText } from '../words/curve.ts';
import { lengthText } from '../words/values.ts';
import { phaseAt } from './frame-text.ts';

type Props = { readonly measurement: ClipMeasurement; readonly unit: LengthUnit; readonly frame: number };

/** The frame at hand in large figures. */
export function CurveReadout({ measurement, unit, frame }: Props) {
  const { curve } = measurement;
  const point = curve[frame];
  if (!point) return null;
  const { stroke, armAngleRad, timeS } = point;
  const phase = phaseAt(measurement, frame);
  const hasArm = curve.some((each) => each.armAngleRad !== null);
  return (
    <dl className={hasArm ? 'curve-readout' : 'curve-readout armless'}>
      <Cell label={CURVE.stroke} large>
        <Value text={stroke && lengthText(stroke.value, unit)} u={stroke && uLengthText(stroke.u, unit)} />
      </Cell>
      {hasArm ? (
        <Cell label={CURVE.angle} large>
          <Value
            text={armAngleRad && angleText(armAngleRad.value)}
            u={armAngleRad && uAngleText(armAngleRad.u)}
          />
        </Cell>
      ) : null}
      <Cell label={CURVE.time} large>
        <Value text={secondsText(timeS)} u={phase && phaseText(phase)} />
      </Cell>
    </dl>
  );
}

function Value({ text, u }: { readonly text: string | null; readonly u: string | null }) {
  if (text === null) return <span className="curve-unseen">{CURVE.notSeen}</span>;
  return (
    <>
      <span className="curve-value">{text}</span> <span className="curve-u">{u}</span>
    </>
  );
}
