import { useId } from 'react';
import type { Measured } from '../../measurement/measured.ts';
import type { TrialResult } from '../../measurement/monte-carlo-joined.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { FINDING } from '../words/findings.ts';
import { strokeTrialsText, TRIALS } from '../words/uncertainty.ts';
import { lengthText } from '../words/values.ts';
import { HistogramSpan } from './HistogramSpan.tsx';
import { histogramPath, histogramScale } from './histogram-scale.ts';

type Props = {
  readonly stated: Measured;
  readonly result: TrialResult;
  readonly limitsMm: readonly number[];
};

const WIDTH = 360;
const TOP = 22;
const BASE = 96;

/** Where the trials fell, with their interval, the stated one and the limit as lines. */
export function TrialsHistogram({ stated, result, limitsMm }: Props) {
  const unit = useLengthUnit();
  const hatch = useId();
  const { symmetric, histogram } = result;
  const { value, U95 } = stated;
  const at = histogramScale(histogram, [value - U95, value + U95], WIDTH);
  const inside = (mm: number) => at(mm) >= 0 && at(mm) <= WIDTH;
  const box = { width: WIDTH, top: TOP, base: BASE };
  const outline = histogramPath(histogram, at, box, null);
  return (
    <svg
      className="finding-bar histogram"
      viewBox={`-4 0 ${WIDTH + 8} ${BASE + 62}`}
      role="img"
      aria-label={`${TRIALS.picture}. ${strokeTrialsText(stated, result, unit)}`}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="6" className="hatch-thin" />
        </pattern>
      </defs>
      <path d={histogramPath(histogram, at, box, symmetric)} fill={`url(#${hatch})`} />
      <path d={outline} className="outline" />
      <line x1="0" x2={WIDTH} y1={BASE} y2={BASE} className="thin" />
      <line x1={at(value)} x2={at(value)} y1={TOP - 4} y2={BASE + 6} className="axis" />
      <HistogramSpan
        at={at}
        width={WIDTH}
        y={BASE + 26}
        from={BASE}
        low={symmetric.low}
        high={symmetric.high}
        text={TRIALS.byTrials}
      />
      <HistogramSpan
        at={at}
        width={WIDTH}
        y={BASE + 52}
        from={BASE}
        low={value - U95}
        high={value + U95}
        text={TRIALS.stated}
      />
      {limitsMm.filter(inside).map((mm) => (
        <g key={mm}>
          <line x1={at(mm)} x2={at(mm)} y1={TOP - 6} y2={BASE} className="limit-line" />
          <text x={at(mm)} y="12" textAnchor={anchorAt(at(mm))} className="limit-text">
            {`${FINDING.limit} ${lengthText(mm, unit)}`}
          </text>
        </g>
      ))}
      {limitsMm
        .filter((mm) => !inside(mm))
        .map((mm) => (
          <text key={mm} x={at(mm) < 0 ? 0 : WIDTH} y="12" textAnchor={at(mm) < 0 ? 'start' : 'end'}>
            {TRIALS.limitBeyond(`${FINDING.limit} ${lengthText(mm, unit)}`, at(mm) < 0)}
          </text>
        ))}
    </svg>
  );
}

function anchorAt(x: number): 'start' | 'middle' | 'end' {
  if (x > WIDTH * 0.8) return 'end';
  return x < WIDTH * 0.2 ? 'start' : 'middle';
}
