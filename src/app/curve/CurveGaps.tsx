import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { openText } from '../words/curve.ts';
import type { CurveScale } from './curve-scale.ts';
import { gapNotes, gapsIn } from './gap-notes.ts';

type Props = {
  readonly measurement: ClipMeasurement;
  readonly scale: CurveScale;
  readonly of: 'stroke' | 'angle';
  readonly baseCss: number;
};

/** Where the curve is open, a span on the time axis says why. */
export function CurveGaps({ measurement, scale, of, baseCss }: Props) {
  return gapNotes(measurement, gapsIn(measurement, of), scale, openText).map(
    ({ fromCss, toCss, narrow, word, wordCss }) => (
      <g key={fromCss} className="curve-gap">
        {narrow ? (
          <path className="curve-thin" d={`M${(fromCss + toCss) / 2} ${baseCss - 9}v9`} />
        ) : (
          <>
            <path className="curve-thin" d={`M${fromCss} ${baseCss - 9}v9M${toCss} ${baseCss - 9}v9`} />
            <path className="curve-gap-span" d={`M${fromCss} ${baseCss - 4}H${toCss}`} />
          </>
        )}
        {wordCss === null ? null : (
          <text x={wordCss} y={baseCss - 12} textAnchor="middle">
            {word}
          </text>
        )}
      </g>
    ),
  );
}
