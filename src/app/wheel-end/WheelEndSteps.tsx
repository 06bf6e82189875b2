import type { InspectionRecord } from '../../record/record.ts';
import type { Position, WheelEnd } from '../../record/wheel-end.ts';
import { openWheelEnd } from '../media/start-wheel-end.ts';
import { positionName } from '../words/inspection.ts';
import { WHEEL_END } from '../words/wheel-end.ts';

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

/** Round the vehicle as one walks it: down the left side from the front, up the right side from the back. */
function walkRound(axles: number): readonly Position[] {
  const numbers = Array.from({ length: axles }, (_, i) => i + 1);
  return [
    ...numbers.map((axle): Position => ({ axle, side: 'left' })),
    ...numbers.toReversed().map((axle): Position => ({ axle, side: 'right' })),
  ];
}

export function WheelEndSteps({ record, wheelEnd }: Props) {
  const way = walkRound(record.vehicle.axles.length);
  const { axle, side } = wheelEnd.position;
  const here = way.findIndex((position) => position.axle === axle && position.side === side);
  const before = way[here - 1];
  const next = way[here + 1];
  return (
    <nav className="row wheel-end-steps" aria-label={WHEEL_END.way}>
      {before ? (
        <button type="button" className="button" onClick={() => openWheelEnd(before)}>
          {`‹ ${positionName(before)}`}
        </button>
      ) : null}
      {next ? (
        <button type="button" className="button onward" onClick={() => openWheelEnd(next)}>
          {`${positionName(next)} ›`}
        </button>
      ) : null}
    </nav>
  );
}
