import { strokeOfUse } from '../../finding/stroke-of-use.ts';
import type { InspectedStroke } from '../../record/unit-history.ts';
import type { Position } from '../../record/wheel-end.ts';
import { holdingResults, type WheelEndResults } from '../../record/wheel-end-results.ts';
import { openWheelEnd } from '../media/start-wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { INSPECTION, positionName, STATE_NAMES, stateText } from '../words/inspection.ts';
import { measuredLengthText } from '../words/values.ts';
import { SmallBar } from './SmallBar.tsx';
import { isUnderWay } from './use-kept-strokes.ts';

type Props = {
  readonly position: Position;
  readonly results: WheelEndResults | null;
  readonly kept: readonly InspectedStroke[];
};

export function PlanCell({ position, results, kept }: Props) {
  const unit = useLengthUnit();
  const underWay = results !== null && isUnderWay(results);
  const limitsMm = results?.limit?.values.map(({ limitMm }) => limitMm) ?? [];
  const last = underWay ? lastKept(kept, position) : results && holdingResults(results).strokeMm;
  const stroke = strokeOfUse(last, limitsMm);
  const needsLook = results?.state === 'over limit' && !underWay;
  const state = results ? stateText(results) : STATE_NAMES['not-started'];
  return (
    <button type="button" className="plan-cell" onClick={() => openWheelEnd(position)}>
      <span className="plan-name">{positionName(position)}</span>
      {stroke ? (
        <span className={underWay ? 'plan-stroke under-way' : 'plan-stroke'}>
          {measuredLengthText(stroke, unit)}
        </span>
      ) : null}
      {stroke && limitsMm.length > 0 ? <SmallBar stroke={stroke} limitsMm={limitsMm} /> : null}
      <span className={needsLook ? 'plan-state look' : 'plan-state'}>
        {underWay ? INSPECTION.underWay : state}
      </span>
    </button>
  );
}

/** After repair where there is one: that comes last. */
function lastKept(kept: readonly InspectedStroke[], { axle, side }: Position) {
  const here = kept.filter(({ position }) => position.axle === axle && position.side === side);
  return here.at(-1)?.strokeMm ?? null;
}
