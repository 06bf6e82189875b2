type Props = {
  readonly at: (mm: number) => number;
  readonly width: number;
  readonly y: number;
  /** Where its extension lines begin. */
  readonly from: number;
  readonly low: number;
  readonly high: number;
  readonly text: string;
};

const ARROW = 9;
const BEYOND = 4;

/** An interval as a dimension: extension lines, arrows, its name above the line. */
export function HistogramSpan({ at, width, y, from, low, high, text }: Props) {
  const [left, right] = [Math.max(0, at(low)), Math.min(width, at(high))];
  const arrow = (x: number, way: 1 | -1) => `M${x} ${y}l${way * ARROW}-2.5v5z`;
  return (
    <g className="span">
      <path
        className="thin-dark"
        d={`M${left} ${from}V${y + BEYOND}M${right} ${from}V${y + BEYOND}M${left} ${y}H${right}`}
      />
      <path className="arrow" d={`${arrow(left, 1)}${arrow(right, -1)}`} />
      <text x={(left + right) / 2} y={y - 4} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}
