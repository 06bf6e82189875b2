/**
 * Which conditions of the inspection are missing or not as the procedure asks. A note is said beside every finding and changes no
 * number: how much a stroke changes with pressure or heat has no source.
 *
 * Rule     each condition is answered yes; the gauge reading that the procedure is about lies in the rule set's range.
 * Source   the rule set's pressure ranges name theirs.
 */
import { kpaFromPsi } from '../basics/units.ts';
import type { Procedure } from '../finding/procedure.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import type { Conditions } from './conditions.ts';

export const ASKED_CONDITIONS = [
  'wheelsChocked',
  'engineOff',
  'springBrakesReleased',
  'fullApplication',
  'drumsCold',
] as const;
export type AskedCondition = (typeof ASKED_CONDITIONS)[number];

export type Gauge = 'before' | 'held';

type Range = {
  readonly procedure: Procedure;
  readonly gauge: Gauge;
  readonly fromPsi: number;
  readonly toPsi: number;
  /** Id of the rule set's source. */
  readonly source: string;
};

export type ConditionNote =
  | {
      readonly code: 'conditions/not-answered' | 'conditions/not-met' | 'conditions/cannot-tell';
      readonly condition: AskedCondition;
    }
  | ({ readonly code: 'conditions/pressure-missing' } & Range)
  | ({
      readonly code: 'conditions/pressure-low' | 'conditions/pressure-high';
      readonly pressureKpa: number;
    } & Range)
  /** Past the pressure above which strokes read long whatever the procedure. */
  | {
      readonly code: 'conditions/pressure-too-high';
      readonly pressureKpa: number;
      readonly tooHighFromPsi: number;
      readonly source: string;
    };

/** A gauge is read in psi or in kPa rounded from it: 690 kPa is meant as 100 psi. */
const ROUNDED_KPA = 1;

export function conditionNotes(conditions: Conditions, ruleSet: RuleSet | null): ConditionNote[] {
  const answers = ASKED_CONDITIONS.flatMap((condition): ConditionNote[] => {
    const answer = conditions[condition];
    if (answer === 'yes') return [];
    if (answer === null) return [{ code: 'conditions/not-answered', condition }];
    return [{ code: answer === 'no' ? 'conditions/not-met' : 'conditions/cannot-tell', condition }];
  });
  return ruleSet ? [...answers, ...pressureNotes(conditions, ruleSet)] : answers;
}

function pressureNotes(conditions: Conditions, { pressure }: RuleSet): ConditionNote[] {
  const range = pressure.ranges.find(({ procedure }) => procedure === conditions.procedure);
  if (!range) return [];
  const { pressureBeforeKpa, pressureHeldKpa } = conditions;
  const pressureKpa = range.gauge === 'before' ? pressureBeforeKpa : pressureHeldKpa;
  const notes: ConditionNote[] = [];
  if (pressureKpa === null) notes.push({ code: 'conditions/pressure-missing', ...range });
  else if (pressureKpa < kpaFromPsi(range.fromPsi) - ROUNDED_KPA)
    notes.push({ code: 'conditions/pressure-low', pressureKpa, ...range });
  else if (pressureKpa > kpaFromPsi(range.toPsi) + ROUNDED_KPA)
    notes.push({ code: 'conditions/pressure-high', pressureKpa, ...range });
  const highestKpa = Math.max(pressureBeforeKpa ?? 0, pressureHeldKpa ?? 0);
  const { tooHighFromPsi, tooHighSource: source } = pressure;
  if (highestKpa > kpaFromPsi(tooHighFromPsi) + ROUNDED_KPA)
    notes.push({ code: 'conditions/pressure-too-high', pressureKpa: highestKpa, tooHighFromPsi, source });
  return notes;
}
