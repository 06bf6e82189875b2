import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { notSeenText } from '../words/curve.ts';
import { gapNotes } from './curve-notes.ts';
import type { CurveScale } from './curve-scale.ts';

type Props = {
  readonly measurement: ClipMeasurement;
  readonly scale: CurveScale;
  readonly of: 'clevis-pin' | 'camshaft-end';
  readonly baseCss: number;
};

/** Where the curve is open, a span on the time axis says why. */
export function CurveGaps({ measurement, scale, of, baseCss }: Props) {
  return gapNotes(measurement, scale, notSeenText)
    .filter(({ kind }) => kind === of || (of === 'clevis-pin' && kind === 'chamber-face'))
    .map(({ kind, fromCss, toCss, wordCss }) => (
      <g key={`${kind} ${fromCss}`} className="curve-gap">
        <path className="curve-thin" d={`M${fromCss} ${baseCss - 9}v9M${toCss} ${baseCss - 9}v9`} />
        <path className="curve-gap-span" d={`M${fromCss} ${baseCss - 4}H${toCss}`} />
        {wordCss === null ? null : (
          <text x={wordCss} y={baseCss - 12} textAnchor="middle">
            {notSeenText(kind)}
          </text>
        )}
      </g>
    ));
}
