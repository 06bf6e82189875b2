import type { Position } from '../../record/wheel-end.ts';
import { holdingResults, type WheelEndResults } from '../../record/wheel-end-results.ts';
import { openWheelEnd } from '../media/start-wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { positionName, STATE_NAMES, stateText } from '../words/inspection.ts';
import { measuredLengthText } from '../words/values.ts';
import { SmallBar } from './SmallBar.tsx';

type Props = { readonly position: Position; readonly results: WheelEndResults | null };

export function PlanCell({ position, results }: Props) {
  const unit = useLengthUnit();
  const stroke = results && holdingResults(results).strokeMm;
  const limitsMm = results?.limit?.values.map(({ limitMm }) => limitMm) ?? [];
  const needsLook = results?.state === 'over limit';
  return (
    <button type="button" className="plan-cell" onClick={() => openWheelEnd(position)}>
      <span className="plan-name">{positionName(position)}</span>
      {stroke ? <span className="plan-stroke">{measuredLengthText(stroke, unit)}</span> : null}
      {stroke && limitsMm.length > 0 ? <SmallBar stroke={stroke} limitsMm={limitsMm} /> : null}
      <span className={needsLook ? 'plan-state look' : 'plan-state'}>
        {results ? stateText(results) : STATE_NAMES['not-started']}
      </span>
    </button>
  );
}
