/**
 * How a brake over the limit counts at the roadside: as one defective brake from 1/4 in past the limit on, as a half below.
 * Second-hand and issued anew every year: a note beside the finding, for the current edition to decide.
 */
import { mmFromInches } from '../basics/units.ts';
import type { WithU } from '../measurement/measured.ts';
import { judge } from './guard-band.ts';
import type { RuleSet } from './rule-set.ts';

export type RoadsideCountNote = {
  readonly code: 'roadside-count/counts';
  readonly excessMm: number;
  readonly wholeBrakeFromMm: number;
  /** Null where the excess lies too near the step, or the limit is open, to tell one from a half. */
  readonly defectiveBrakes: 1 | 0.5 | null;
  /** Id of the rule set's source. */
  readonly source: string;
};

/** For a stroke that is over every one of these limits, highest last. */
export function roadsideCount(
  stroke: WithU,
  limitsMm: readonly [number, ...number[]],
  ruleSet: RuleSet,
): RoadsideCountNote {
  const wholeBrakeFromMm = mmFromInches(ruleSet.roadsideCount.wholeBrakeFromIn);
  const counts = new Set(
    limitsMm.map((limitMm) => {
      const { outcome } = judge(stroke.value, stroke.u, limitMm + wholeBrakeFromMm);
      if (outcome === 'not decided') return null;
      return outcome === 'over limit' ? 1 : 0.5;
    }),
  );
  const [only = null] = counts;
  return {
    code: 'roadside-count/counts',
    excessMm: stroke.value - Math.max(...limitsMm),
    wholeBrakeFromMm,
    defectiveBrakes: counts.size === 1 ? only : null,
    source: ruleSet.roadsideCount.source,
  };
}
