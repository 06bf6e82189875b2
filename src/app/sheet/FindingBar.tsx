import { useId } from 'react';
import { guardMmOf } from '../../finding/guard-band.ts';
import type { WithU } from '../../measurement/measured.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { FINDING } from '../words/findings.ts';
import { lengthText, measuredLengthText } from '../words/values.ts';
import { barScale } from './bar-scale.ts';

type Props = { readonly stroke: WithU | null; readonly limitsMm: readonly number[] };

const WIDTH = 360;
const BAR_TOP = 24;
const BAR_HEIGHT = 20;
const BASE = BAR_TOP + BAR_HEIGHT;
const U_Y = BASE - (BAR_HEIGHT - 4) / 2;
/** At the right end of the numbers stands their unit: half of a number and all of that. */
const UNIT_ROOM = 36;

const ends = (stroke: WithU | null, reach: (stroke: WithU) => number) => ({
  low: stroke ? Math.max(0, stroke.value - reach(stroke)) : 0,
  high: stroke ? Math.max(0, stroke.value + reach(stroke)) : 0,
});

/** Clear of the line, across it, or touching it: told without colour and without reading. Hatched is what the finding counts, so that both agree. */
export function FindingBar({ stroke, limitsMm }: Props) {
  const unit = useLengthUnit();
  const hatch = useId();
  const { low, high } = ends(stroke, (one) => guardMmOf(one.u));
  const U = ends(stroke, (one) => one.U95);
  const { endMm, ticks } = barScale([...limitsMm, U.high], unit);
  const at = (mm: number) => (mm / endMm) * WIDTH;
  const limits = limitsMm.map((mm) => `${FINDING.limit} ${lengthText(mm, unit)}`);
  const said = [stroke ? measuredLengthText(stroke, unit) : FINDING.noStroke, ...limits].join(', ');
  return (
    <svg
      className="finding-bar"
      viewBox={`-2 0 ${WIDTH + 4} 66`}
      role="img"
      aria-label={`${FINDING.bar}: ${said}`}
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="5" className="hatch-line" />
        </pattern>
      </defs>
      {ticks.map(({ atMm, long }) => (
        <line key={atMm} x1={at(atMm)} x2={at(atMm)} y1={BASE} y2={BASE + (long ? 8 : 4)} className="thin" />
      ))}
      {ticks
        .filter(({ long, atMm }) => long && at(atMm) < WIDTH - UNIT_ROOM)
        .map(({ atMm }) => (
          <text key={atMm} x={at(atMm)} y={BASE + 19} textAnchor={atMm === 0 ? 'start' : 'middle'}>
            {lengthText(atMm, unit).replace(/ (in|mm)$/, '')}
          </text>
        ))}
      <text x={WIDTH} y={BASE + 19} textAnchor="end">
        {unit === 'mm' ? 'mm' : 'in'}
      </text>
      <line x1="0" x2={WIDTH} y1={BASE} y2={BASE} className="thin" />
      {stroke ? (
        <>
          <rect x="0" y={BAR_TOP + 4} width={at(low)} height={BAR_HEIGHT - 4} className="solid" />
          <rect
            x={at(low)}
            y={BAR_TOP + 4}
            width={at(high) - at(low)}
            height={BAR_HEIGHT - 4}
            fill={`url(#${hatch})`}
            className="hatched"
          />
          <path
            d={`M${at(U.low)} ${U_Y}H${at(low)}M${at(high)} ${U_Y}H${at(U.high)}`}
            className="value-line"
          />
          <line x1={at(stroke.value)} x2={at(stroke.value)} y1={BAR_TOP} y2={BASE} className="value-line" />
        </>
      ) : null}
      {limitsMm.map((mm) => (
        <g key={mm}>
          <line x1={at(mm)} x2={at(mm)} y1="17" y2={BASE} className="limit-line" />
          <text x={at(mm)} y="12" textAnchor={at(mm) > WIDTH * 0.8 ? 'end' : 'middle'} className="limit-text">
            {`${FINDING.limit} ${lengthText(mm, unit)}`}
          </text>
        </g>
      ))}
    </svg>
  );
}
