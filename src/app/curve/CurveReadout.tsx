import type { LengthUnit } from '../../basics/length-text.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { Cell } from '../sheet/Cell.tsx';
import { angleText, CURVE, phaseText, secondsText, uAngleText, uLengthText } from '../words/curve.ts';
import { lengthText } from '../words/values.ts';
import { openAt, phaseAt } from './frame-text.ts';

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
        {stroke ? (
          <Value text={lengthText(stroke.value, unit)} u={uLengthText(stroke.u, unit)} />
        ) : (
          <Open text={openAt(measurement, frame, 'stroke')} />
        )}
      </Cell>
      {hasArm ? (
        <Cell label={CURVE.angle} large>
          {armAngleRad ? (
            <Value text={angleText(armAngleRad.value)} u={uAngleText(armAngleRad.u)} />
          ) : (
            <Open text={openAt(measurement, frame, stroke ? 'angle' : 'stroke')} />
          )}
        </Cell>
      ) : null}
      <Cell label={CURVE.time} large>
        <Value text={secondsText(timeS)} u={phase && phaseText(phase)} />
      </Cell>
    </dl>
  );
}

function Value({ text, u }: { readonly text: string; readonly u: string | null }) {
  return (
    <>
      <span className="curve-value">{text}</span> <span className="curve-u">{u}</span>
    </>
  );
}

function Open({ text }: { readonly text: string }) {
  return <span className="curve-unseen">{text}</span>;
}
