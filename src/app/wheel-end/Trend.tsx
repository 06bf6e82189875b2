import type { WithU } from '../../measurement/measured.ts';
import type { DatedStroke } from '../../record/unit-history.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { lengthText, shortDayText } from '../words/values.ts';
import { WHEEL_END } from '../words/wheel-end.ts';

type Props = {
  readonly strokes: readonly DatedStroke[];
  /** Of today; null while there is none. */
  readonly now: WithU | null;
  readonly limitsMm: readonly number[];
};

const WIDTH = 360;
const TOP = 16;
const BASE = 96;
const SHOWN = 8;

/** The wheel end's strokes from inspection to inspection, each with its U, under the limit. */
export function Trend({ strokes, now, limitsMm }: Props) {
  const unit = useLengthUnit();
  const earlier = strokes.slice(-SHOWN);
  if (earlier.length === 0) return null;
  const points = [
    ...earlier.map(({ createdAt, strokeMm }) => ({ strokeMm, day: shortDayText(createdAt) })),
    ...(now ? [{ strokeMm: now, day: WHEEL_END.now }] : []),
  ];
  const endMm = Math.max(...limitsMm, ...points.map(({ strokeMm: { value, U95 } }) => value + U95)) * 1.05;
  const y = (mm: number) => BASE - (Math.max(0, mm) / endMm) * (BASE - TOP);
  const x = (index: number) => 28 + (index * (WIDTH - 56)) / Math.max(1, points.length - 1);
  const said = points.map(({ strokeMm, day }) => `${day} ${lengthText(strokeMm.value, unit)}`).join(', ');
  return (
    <figure>
      <figcaption className="quiet">{WHEEL_END.trend}</figcaption>
      <svg
        className="trend finding-bar"
        viewBox={`0 0 ${WIDTH} 116`}
        role="img"
        aria-label={`${WHEEL_END.trend}: ${said}`}
      >
        <line x1="0" x2={WIDTH} y1={BASE} y2={BASE} className="thin" />
        {limitsMm.map((mm) => (
          <g key={mm}>
            <line x1="0" x2={WIDTH} y1={y(mm)} y2={y(mm)} className="trend-limit" />
            <text x={WIDTH} y={y(mm) - 4} textAnchor="end" className="limit-text">
              {lengthText(mm, unit)}
            </text>
          </g>
        ))}
        {points.map(({ strokeMm: { value, U95 }, day }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the points stay in the order of their days.
          <g key={index}>
            <line
              x1={x(index)}
              x2={x(index)}
              y1={y(value - U95)}
              y2={y(value + U95)}
              className="value-line"
            />
            <circle cx={x(index)} cy={y(value)} r="4" className="solid" />
            <text x={x(index)} y={BASE + 15} textAnchor="middle">
              {day}
            </text>
          </g>
        ))}
      </svg>
    </figure>
  );
}
