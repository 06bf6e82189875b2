import { radFromDeg } from '../../basics/units.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { CURVE } from '../words/curve.ts';
import { CurveGaps } from './CurveGaps.tsx';
import { curvePath } from './curve-path.ts';
import { type AngleStrip, type CurveScale, SQUARE_RAD } from './curve-scale.ts';

type Props = {
  readonly measurement: ClipMeasurement;
  readonly scale: CurveScale;
  readonly strip: AngleStrip;
};

/** The arm's angle on the same time, square marked as an axis. */
export function AngleStripDrawing({ measurement, scale, strip }: Props) {
  const { leftCss, rightCss, xAt } = scale;
  const { topCss, baseCss, yAt, ticksDeg } = strip;
  const frames = measurement.curve.map(({ timeS, armAngleRad }) => ({ timeS, seen: armAngleRad }));
  const squareY = yAt(SQUARE_RAD);
  return (
    <g>
      <text x={leftCss} y={topCss - 8}>
        {CURVE.angle}
      </text>
      <path className="curve-axis" d={`M${leftCss} ${topCss}V${baseCss}H${rightCss}`} />
      {ticksDeg.map((deg) => (
        <g key={deg}>
          <path className="curve-axis" d={`M${leftCss - 8} ${yAt(radFromDeg(deg))}h8`} />
          <text x={leftCss - 11} y={yAt(radFromDeg(deg)) + 5} textAnchor="end">
            {`${deg}°`}
          </text>
        </g>
      ))}
      <path className="curve-square" d={`M${leftCss} ${squareY}H${rightCss}`} />
      <path className="curve-angle-line" d={curvePath(frames, { xAt, yAt })} />
      {measurement.square ? (
        <path className="curve-thin" d={`M${xAt(measurement.square.timeS)} ${squareY - 8}v16`} />
      ) : null}
      <CurveGaps measurement={measurement} scale={scale} of="angle" baseCss={baseCss} />
    </g>
  );
}
