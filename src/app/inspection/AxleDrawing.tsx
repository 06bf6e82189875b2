import type { AxleKind } from '../../record/vehicle.ts';

type Props = { readonly kind: AxleKind | null; readonly number: number };

const TYRE = { width: 9, height: 40 };

/** One axle from above, between its two wheel ends: beam and tyres, single on a steer axle and twin elsewhere. */
export function AxleDrawing({ kind, number }: Props) {
  const tyres = kind === 'steer' ? [36] : [28, 39];
  return (
    <div className="axle-drawing">
      <svg viewBox="-52 -24 104 48" aria-hidden="true">
        {[-1, 1].flatMap((side) =>
          tyres.map((x) => (
            <rect
              key={side * x}
              x={side > 0 ? x : -x - TYRE.width}
              y={-TYRE.height / 2}
              width={TYRE.width}
              height={TYRE.height}
              rx="2"
              className={kind === 'lift' ? 'tyre lifted' : 'tyre'}
            />
          )),
        )}
        <path className="beam" d={`M${-(tyres[0] ?? 0)} 0H${tyres[0]}`} />
        <circle className="axle-number" r="13" />
        <text y="6" textAnchor="middle">
          {number}
        </text>
      </svg>
    </div>
  );
}
