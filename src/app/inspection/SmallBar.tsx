import { useId } from 'react';
import { guardMmOf } from '../../finding/guard-band.ts';
import type { WithU } from '../../measurement/measured.ts';

type Props = { readonly stroke: WithU; readonly limitsMm: readonly number[] };

const WIDTH = 120;
const BASE = 20;

/** The finding's bar without its scale: the solid part is sure, the hatched part what the finding counts about the value, the line is the limit. */
export function SmallBar({ stroke, limitsMm }: Props) {
  const hatch = useId();
  const guardMm = guardMmOf(stroke.u);
  const endMm = Math.max(...limitsMm.map((mm) => mm * 1.2), stroke.value + guardMm);
  const at = (mm: number) => (Math.max(0, mm) / endMm) * WIDTH;
  const [low, high] = [at(stroke.value - guardMm), at(stroke.value + guardMm)];
  return (
    <svg className="finding-bar small" viewBox={`-1 0 ${WIDTH + 2} 22`} aria-hidden="true">
      <defs>
        <pattern id={hatch} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="4" className="hatch-line" />
        </pattern>
      </defs>
      <line x1="0" x2={WIDTH} y1={BASE} y2={BASE} className="thin" />
      <rect x="0" y="8" width={low} height={BASE - 8} className="solid" />
      <rect x={low} y="8" width={high - low} height={BASE - 8} fill={`url(#${hatch})`} className="hatched" />
      {limitsMm.map((mm) => (
        <line key={mm} x1={at(mm)} x2={at(mm)} y1="2" y2={BASE + 1} className="limit-line" />
      ))}
    </svg>
  );
}
