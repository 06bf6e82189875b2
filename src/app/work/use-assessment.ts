import { useMemo } from 'react';
import { type Assessment, assess } from '../../record/results.ts';
import type { Current } from './current.ts';

/** Computed from the record whenever what it depends on changes, never stored. */
export function useAssessment({ record, wheelEnd, measurement }: Current): Assessment {
  const { captures, ruleSetId } = record;
  const { chamber } = wheelEnd;
  // biome-ignore lint/correctness/useExhaustiveDependencies: unit, position and other wheel ends do not bear on the result.
  return useMemo(() => assess(record, wheelEnd, measurement), [measurement, chamber, captures, ruleSetId]);
}
