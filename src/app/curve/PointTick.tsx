import { CURVE } from '../words/curve.ts';
import type { PointNote } from './point-notes.ts';

const HALF_CSS = 7;
const WORD_CSS = 11;

/** A point of the curve that has a name: a fine tick across it and its word. */
export function PointTick({ note }: { readonly note: PointNote }) {
  const { xCss, yCss, wordCss, kind } = note;
  const tick = `M${xCss - HALF_CSS} ${yCss}h${2 * HALF_CSS}`;
  return (
    <g className="curve-point">
      <path className="curve-halo" d={tick} />
      <path className="curve-thin" d={tick} />
      {wordCss === null ? null : (
        <text x={xCss - WORD_CSS} y={wordCss + 5} textAnchor="end">
          {kind === 'ninety' ? CURVE.ninety : CURVE.square}
        </text>
      )}
    </g>
  );
}
