import { useId } from 'react';
import type { AdjusterTurn } from '../../measurement/adjuster-turn.ts';
import { turnText, WRENCH } from '../words/adjuster.ts';
import { anchorAt, arcPath, arrowPath, handPath, hexPath, onRim, RIM, sectorPath } from './clock-face.ts';

const HOURS = Array.from({ length: 12 }, (_hour, i) => (i * Math.PI) / 6);
const TURN_RADIUS = 62;
const HEX = 14;
const NAME_APART = 8;

type Props = {
  readonly turn: AdjusterTurn;
  /** Whether it is asked for the wrench put over: where to is drawn broken. */
  readonly putOver: boolean;
};

const THIRDS = [(2 * Math.PI) / 3, (-2 * Math.PI) / 3];

/** The wrench in all its places as the first picture shows it; the last within its uncertainty, hatched. */
export function ClockFace({ turn, putOver }: Props) {
  const hatch = useId();
  const { firstDirectionRad: first, totalRad, places } = turn;
  const last = first + totalRad.value;
  const U95 = 1.96 * totalRad.u;
  const apart = Math.abs(totalRad.value) > 0.3;
  return (
    <svg
      className="drawing clock-face"
      viewBox="-144 -124 288 248"
      role="img"
      aria-label={`${WRENCH.clock}: ${turnText(totalRad)}`}
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="5" className="hatch-line" />
        </pattern>
      </defs>
      <circle r={RIM} />
      {HOURS.map((hour) => (
        <path key={hour} className="thin" d={handPath(hour, RIM - 6, RIM)} />
      ))}
      <path className="centre-line" d="M-108 0H108M0-108V108" />
      <path className="clock-unsure" d={sectorPath(last - U95, last + U95, RIM)} fill={`url(#${hatch})`} />
      {places.map(({ applicationsBefore, turnRad }) => (
        <path
          key={applicationsBefore}
          className="phantom"
          d={handPath(first + turnRad.value, HEX, RIM - 10)}
        />
      ))}
      {(putOver ? THIRDS : []).map((third) => (
        <path key={third} className="clock-next" d={handPath(last + third, HEX, RIM)} />
      ))}
      <path className="outline" d={handPath(first, HEX, RIM)} />
      <path className="clock-last" d={handPath(last, HEX, RIM)} />
      {apart ? (
        <>
          <path className="dimension-drawn" d={arcPath(first, last, TURN_RADIUS)} />
          <path className="arrow" d={arrowPath(last, TURN_RADIUS, totalRad.value > 0)} />
          <NameAtRim angleRad={last}>{WRENCH.last}</NameAtRim>
        </>
      ) : null}
      <NameAtRim angleRad={first}>{WRENCH.first}</NameAtRim>
      <path className="filled" d={hexPath(HEX)} />
    </svg>
  );
}

/** Clear of the rim: it begins there on the right, ends there on the left. */
function NameAtRim({ angleRad, children }: { readonly angleRad: number; readonly children: string }) {
  const [x, y] = onRim(angleRad, RIM + NAME_APART);
  return (
    <text x={x} y={y + 5 + 5 * Math.sin(angleRad)} textAnchor={anchorAt(angleRad)}>
      {children}
    </text>
  );
}
