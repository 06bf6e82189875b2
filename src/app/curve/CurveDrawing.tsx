import { memo, useId } from 'react';
import type { LengthUnit } from '../../basics/length-text.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { tickLengthText, tickSecondsText } from '../words/curve.ts';
import { FINDING } from '../words/findings.ts';
import { lengthText, measuredLengthText } from '../words/values.ts';
import { AngleStripDrawing } from './AngleStripDrawing.tsx';
import { CurveGaps } from './CurveGaps.tsx';
import { bandPath, curvePath } from './curve-path.ts';
import { type CurveScale, GAP_LANE_CSS } from './curve-scale.ts';
import { markedPath } from './marked-path.ts';
import { PlateauDimension } from './PlateauDimension.tsx';
import { PointTick } from './PointTick.tsx';
import { plateauNotes } from './plateau-notes.ts';
import { pointNotes } from './point-notes.ts';

type Props = {
  readonly measurement: ClipMeasurement;
  readonly limitMm: number | null;
  readonly unit: LengthUnit;
  readonly scale: CurveScale;
};

/** All of the chart that stays while the frame changes. */
export const CurveDrawing = memo(function CurveDrawing({ measurement, limitMm, unit, scale }: Props) {
  const hatch = useId();
  const { widthCss, leftCss, rightCss, topCss, baseCss, xAt, yAt } = scale;
  const frames = measurement.curve.map(({ timeS, stroke }) => ({ timeS, seen: stroke }));
  const plateaus = plateauNotes(measurement, scale, ({ strokeMm }) => measuredLengthText(strokeMm, unit));
  const tickBase = scale.angle?.baseCss ?? baseCss;
  return (
    <svg
      className="curve-drawing"
      viewBox={`0 0 ${widthCss} ${scale.heightCss}`}
      width={widthCss}
      height={scale.heightCss}
      aria-hidden="true"
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="5" className="curve-hatch" />
        </pattern>
      </defs>

      <path className="curve-axis" d={`M${leftCss} ${topCss}V${baseCss}H${rightCss}`} />
      {scale.strokeTicks.map(({ atMm, long }) => (
        <g key={atMm}>
          <path className="curve-axis" d={`M${leftCss - (long ? 8 : 4)} ${yAt(atMm)}h${long ? 8 : 4}`} />
          {long ? (
            <text x={leftCss - 11} y={yAt(atMm) + 5} textAnchor="end">
              {tickLengthText(atMm, unit)}
            </text>
          ) : null}
        </g>
      ))}
      <text x={leftCss - 11} y={topCss - 9} textAnchor="end">
        {unit === 'mm' ? 'mm' : 'in'}
      </text>
      <path className="curve-released" d={`M${leftCss} ${baseCss - GAP_LANE_CSS}H${rightCss}`} />

      {limitMm === null ? null : (
        <path className="curve-limit" d={`M${leftCss} ${yAt(limitMm)}H${rightCss}`} />
      )}
      {plateaus.map((note) => (
        <PlateauDimension
          key={note.number}
          note={note}
          numbered={plateaus.length > 1}
          hatch={`url(#${hatch})`}
        />
      ))}
      <path d={bandPath(frames, { xAt, yAt })} fill={`url(#${hatch})`} />
      <path className="curve-line" d={curvePath(frames, { xAt, yAt })} />
      {pointNotes(measurement, scale).map((note) => (
        <PointTick key={`${note.kind} ${note.xCss}`} note={note} />
      ))}
      <CurveGaps measurement={measurement} scale={scale} of="stroke" baseCss={baseCss} />
      <path className="curve-marked" d={markedPath(measurement, scale)} />
      {limitMm === null ? null : (
        <text className="curve-limit-text" x={leftCss + 6} y={yAt(limitMm) - 7}>
          {`${FINDING.limit} ${lengthText(limitMm, unit)}`}
        </text>
      )}

      {scale.angle ? <AngleStripDrawing measurement={measurement} scale={scale} strip={scale.angle} /> : null}
      {scale.timeTicks.map((timeS) => (
        <g key={timeS}>
          <path className="curve-axis" d={`M${xAt(timeS)} ${baseCss}v6M${xAt(timeS)} ${tickBase}v6`} />
          <text x={xAt(timeS)} y={tickBase + 20} textAnchor="middle">
            {tickSecondsText(timeS)}
          </text>
        </g>
      ))}
      <text x={rightCss + 10} y={tickBase + 20} textAnchor="end">
        s
      </text>
    </svg>
  );
});
