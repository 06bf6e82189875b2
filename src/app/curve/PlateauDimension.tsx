import { arrowsPath, linesPath } from '../viewer/line-path.ts';
import type { PlateauNote } from './plateau-notes.ts';

type Props = { readonly note: PlateauNote; readonly numbered: boolean; readonly hatch: string };

const NUMBER_MIDDLE_CSS = 16;

/** The stroke of one application as a dimension from the released level to the held one. */
export function PlateauDimension({ note, numbered, hatch }: Props) {
  const { lines, extension, held, xCss, text, textCss, upright } = note;
  const middle = {
    x: lines.value.leftCss + lines.value.widthCss / 2,
    y: lines.value.topCss + lines.value.heightCss / 2,
  };
  return (
    <g>
      <rect
        className="curve-held"
        x={held.leftCss}
        y={held.topCss}
        width={held.widthCss}
        height={held.heightCss}
        fill={hatch}
      />
      <path className="curve-thin" d={`M${extension.fromCss} ${extension.yCss}H${extension.toCss}`} />
      <path className="curve-thin" d={linesPath(lines.shafts)} />
      <path className="curve-arrow" d={arrowsPath(lines.arrows)} />
      <text
        className="curve-dimension"
        fontSize={textCss}
        textAnchor="middle"
        dy="0.36em"
        transform={`translate(${middle.x} ${middle.y})${upright ? '' : 'rotate(-90)'}`}
      >
        {text}
      </text>
      {numbered ? (
        <g className="curve-number" transform={`translate(${xCss} ${NUMBER_MIDDLE_CSS})`}>
          <circle r="12" />
          <text textAnchor="middle" dy="0.36em">
            {note.number}
          </text>
        </g>
      ) : null}
    </g>
  );
}
