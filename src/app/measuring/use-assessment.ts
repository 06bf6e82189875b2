import { useEffect, useMemo, useState } from 'react';
import { strokeOfUse } from '../../finding/stroke-of-use.ts';
import type { WithU } from '../../measurement/measured.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';
import { type Assessment, findingFor } from '../../record/results.ts';
import type { Current } from '../work/current.ts';
import { type Measured, measureApart } from './measure-client.ts';
import { useMeasureInput } from './use-measure-input.ts';

export type ShownAssessment = Assessment & {
  /** What is shown belongs to marks as they were a moment ago; the answer for the present ones is under way. */
  readonly underWay: boolean;
  /** Null where there is none, or none known well enough to be a number. */
  readonly shownStrokeMm: WithU | null;
};

type Answer = { readonly input: MeasureInput; readonly measured: Measured };

const NOTHING_YET: Measured = {
  ok: false,
  failure: { code: 'measurement/view-missing', state: 'released' },
};

/** Computed from the record whenever what it depends on changes, never stored. The last answer stays until the next. */
export function useAssessment(current: Current): ShownAssessment {
  const { record, wheelEnd, measurement } = current;
  const { ruleSetId } = record;
  const { chamber, identification } = wheelEnd;
  const input = useMeasureInput(current);
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(() => measureApart(input, (measured) => setAnswer({ input, measured })), [input]);

  const measured = answer?.measured ?? NOTHING_YET;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the finding follows from the rule set, the chamber with its looks and the sights.
  const finding = useMemo(
    () => findingFor(record, wheelEnd, measurement, measured),
    [measured, chamber, identification, ruleSetId, measurement.overStrokeMark],
  );
  const limitsMm = finding.limit?.values.map(({ limitMm }) => limitMm) ?? [];
  return {
    measurement: measured,
    finding,
    underWay: answer?.input !== input,
    shownStrokeMm: strokeOfUse(measured.ok ? measured.value.strokeMm : null, limitsMm),
  };
}
