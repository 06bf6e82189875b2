import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { type CurveScale, HANDLE_LANE_CSS } from './curve-scale.ts';

type Props = { readonly measurement: ClipMeasurement; readonly scale: CurveScale; readonly frame: number };

const GRIP_CSS = 44;
const KNURL_CSS = [-12, -6, 0, 6, 12];

/** A slide on the time axis, its line through both curves. Apart from the drawing, which does not change while a hand moves it. */
export function CurveCursor({ measurement, scale, frame }: Props) {
  const point = measurement.curve[frame];
  if (!point) return null;
  const x = scale.xAt(point.timeS);
  const laneTop = scale.heightCss - HANDLE_LANE_CSS;
  const { stroke, armAngleRad } = point;
  return (
    <svg
      className="curve-cursor"
      viewBox={`0 0 ${scale.widthCss} ${scale.heightCss}`}
      width={scale.widthCss}
      height={scale.heightCss}
      aria-hidden="true"
    >
      <path className="curve-groove" d={`M${scale.leftCss} ${laneTop + 24}H${scale.rightCss}`} />
      <g transform={`translate(${x.toFixed(1)} 0)`}>
        <path className="curve-cursor-line" d={`M0 ${scale.topCss - 6}V${laneTop + 7}`} />
        {stroke ? <circle className="curve-ring" cy={scale.yAt(stroke.value)} r="5" /> : null}
        {armAngleRad && scale.angle ? (
          <circle className="curve-ring" cy={scale.angle.yAt(armAngleRad.value)} r="5" />
        ) : null}
        <rect
          className="curve-hit"
          x={-HANDLE_LANE_CSS / 2}
          y={laneTop}
          width={HANDLE_LANE_CSS}
          height={HANDLE_LANE_CSS}
        />
        <path className="curve-grip" d={`M-${GRIP_CSS / 2} ${laneTop + 7}h${GRIP_CSS}v34h-${GRIP_CSS}Z`} />
        <path className="curve-knurl" d={KNURL_CSS.map((at) => `M${at} ${laneTop + 14}v20`).join('')} />
      </g>
    </svg>
  );
}
