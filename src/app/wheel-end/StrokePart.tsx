import type { Capture } from '../../captures/capture.ts';
import { decidingBound } from '../../finding/guard-band.ts';
import type { Limit } from '../../finding/limit.ts';
import { strokeOfUse } from '../../finding/stroke-of-use.ts';
import type { PurposeResults } from '../../record/purpose-results.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import { measureWheelEnd } from '../media/start-wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { FindingBar } from '../sheet/FindingBar.tsx';
import { boundText, FINDING, undecidedText } from '../words/findings.ts';
import { STATE_NAMES } from '../words/inspection.ts';
import { measuredLengthText } from '../words/values.ts';
import { PURPOSE_NAMES, WHEEL_END } from '../words/wheel-end.ts';
import { HandReadings } from './HandReadings.tsx';
import { MeasurementButton } from './MeasurementButton.tsx';
import { StrokeLines } from './StrokeLines.tsx';

type Props = {
  readonly wheelEnd: WheelEnd;
  readonly results: PurposeResults;
  readonly limit: Limit | null;
  readonly captures: readonly Capture[];
};

/** The stroke for one purpose: what it came to, and the ways to it. */
export function StrokePart({ wheelEnd, results, limit, captures }: Props) {
  const unit = useLengthUnit();
  const { purpose, finding, basis } = results;
  const measurements = wheelEnd.measurements.filter((one) => one.purpose === purpose);
  const limitsMm = limit?.values.map(({ limitMm }) => limitMm) ?? [];
  const strokeMm = strokeOfUse(results.strokeMm, limitsMm);
  const bound = finding && strokeMm ? decidingBound(finding.outcome, strokeMm) : null;
  return (
    <div className="form">
      {purpose === 'as-found' ? <h2 className="part-title">{PURPOSE_NAMES[purpose]}</h2> : null}
      {results.measurement?.assessment === null ? <p className="quiet">{FINDING.underWay}</p> : null}
      {results.strokeMm && !strokeMm ? <p>{FINDING.notHeld}</p> : null}
      {strokeMm ? (
        <p className="stroke-value">
          {measuredLengthText(strokeMm, unit)}
          {basis === 'hand' ? <span className="quiet"> {WHEEL_END.byHand}</span> : null}
        </p>
      ) : null}
      {finding && strokeMm ? (
        <p className={finding.outcome === 'over limit' ? 'outcome look' : 'outcome'}>
          {STATE_NAMES[finding.outcome]}
        </p>
      ) : null}
      {bound ? <p className="bound">{boundText(bound, unit)}</p> : null}
      {strokeMm || limitsMm.length > 0 ? <FindingBar stroke={strokeMm} limitsMm={limitsMm} /> : null}
      {strokeMm && finding
        ? finding.reasons.map((reason) => <p key={JSON.stringify(reason)}>{undecidedText(reason, unit)}</p>)
        : null}
      <StrokeLines results={results} />
      {measurements.map((measurement, index) => (
        <MeasurementButton
          key={measurement.id}
          wheelEndId={wheelEnd.id}
          measurement={measurement}
          captures={captures}
          number={index + 1}
          main={measurement.views.length === 0}
        />
      ))}
      {measurements.length === 0 ? (
        <>
          <button
            type="button"
            className={strokeMm === null && purpose === 'as-found' ? 'button main wide' : 'button wide'}
            onClick={() => measureWheelEnd(wheelEnd.id, purpose)}
          >
            {WHEEL_END.measure}
          </button>
          <p className="quiet">{WHEEL_END.measureHint}</p>
        </>
      ) : null}
      {measurements.length > 0 && strokeMm !== null && basis === 'pictures' ? (
        <button type="button" className="button plain" onClick={() => measureWheelEnd(wheelEnd.id, purpose)}>
          {WHEEL_END.measureAgain}
        </button>
      ) : null}
      <HandReadings wheelEnd={wheelEnd} purpose={purpose} />
    </div>
  );
}
