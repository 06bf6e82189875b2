import type { LengthUnit } from '../../basics/length-text.ts';
import type { Application, ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { Cell } from '../sheet/Cell.tsx';
import {
  APPLICATIONS,
  clipWarningText,
  creepAndUText,
  strokeAndUText,
  timeAndUText,
} from '../words/curve.ts';
import { FINDING } from '../words/findings.ts';
import { measuredLengthText } from '../words/values.ts';

type Props = { readonly measurement: ClipMeasurement; readonly unit: LengthUnit };

/** Each application a ruled line of cells, as in the title block: side by side where there is room, two by two on a phone. */
export function ApplicationTable({ measurement, unit }: Props) {
  const { applications, pictured, longer, spreadMm, warnings } = measurement;
  return (
    <section className="applications" aria-label={APPLICATIONS.heading}>
      {warnings.map((warning) => (
        <p key={warning.code} className="clip-warning">
          {clipWarningText(warning, unit)}
        </p>
      ))}
      {longer === null ? null : <p className="clip-warning">{APPLICATIONS.longer(longer + 1)}</p>}
      {pictured !== null && applications.length > 1 ? <p>{APPLICATIONS.pictured(pictured + 1)}</p> : null}
      <ol>
        {applications.map((application, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an application is named by its place in the clip.
          <li key={index} aria-label={APPLICATIONS.number(index + 1)}>
            {applications.length > 1 ? (
              <span className="application-number" aria-hidden="true">
                {index + 1}
              </span>
            ) : null}
            <ApplicationCells application={application} unit={unit} />
          </li>
        ))}
      </ol>
      <p className="quiet">
        {spreadMm ? `${APPLICATIONS.spread}: ${strokeAndUText(spreadMm, unit)}. ` : null}
        {FINDING.confidence}
      </p>
    </section>
  );
}

function ApplicationCells({
  application,
  unit,
}: {
  readonly application: Application;
  readonly unit: LengthUnit;
}) {
  const { strokeMm, toNinetyPercentS, toFullS, releaseS, creepMmPerS } = application;
  return (
    <dl>
      <Cell label={APPLICATIONS.stroke} size="whole" large>
        {measuredLengthText(strokeMm, unit)}
      </Cell>
      <Cell label={APPLICATIONS.ninety}>
        <WithU texts={toNinetyPercentS && timeAndUText(toNinetyPercentS)} />
      </Cell>
      <Cell label={APPLICATIONS.full}>
        <WithU texts={toFullS && timeAndUText(toFullS)} />
      </Cell>
      <Cell label={APPLICATIONS.release}>
        <WithU texts={releaseS && timeAndUText(releaseS)} />
      </Cell>
      <Cell label={APPLICATIONS.creep}>
        <WithU texts={creepMmPerS && creepAndUText(creepMmPerS, unit)} />
      </Cell>
    </dl>
  );
}

function WithU({ texts }: { readonly texts: readonly [value: string, u: string] | null }) {
  if (!texts) return <span className="quiet">{APPLICATIONS.notShown}</span>;
  return (
    <>
      <span className="application-value">{texts[0]}</span> <span className="curve-u">{texts[1]}</span>
    </>
  );
}
