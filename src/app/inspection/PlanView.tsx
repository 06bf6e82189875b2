import type { InspectionResults } from '../../record/inspection-results.ts';
import type { InspectedStroke } from '../../record/unit-history.ts';
import type { Vehicle } from '../../record/vehicle.ts';
import { INSPECTION } from '../words/inspection.ts';
import { AxleDrawing } from './AxleDrawing.tsx';
import { PlanCell } from './PlanCell.tsx';

type Props = {
  readonly vehicle: Vehicle;
  readonly results: InspectionResults;
  readonly kept: readonly InspectedStroke[];
};

/** The vehicle from above is also the way to its wheel ends. */
export function PlanView({ vehicle, results, kept }: Props) {
  if (vehicle.axles.length === 0) return <p>{INSPECTION.noAxles}</p>;
  return (
    <nav className="plan" aria-label={INSPECTION.plan}>
      <p className="plan-front">
        <svg viewBox="0 0 12 14" aria-hidden="true">
          <path d="M6 13V2M1 7l5-5 5 5" />
        </svg>
        {INSPECTION.front}
      </p>
      {results.axles.map(({ axle, kind, left, right }) => (
        <div key={axle} className="plan-axle">
          <PlanCell position={{ axle, side: 'left' }} results={left} kept={kept} />
          <AxleDrawing kind={kind} number={axle} />
          <PlanCell position={{ axle, side: 'right' }} results={right} kept={kept} />
        </div>
      ))}
    </nav>
  );
}
