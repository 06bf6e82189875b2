/** The chambers that a rule set lists, for a person to choose from. */
import { mmFromInches } from '../basics/units.ts';
import { type ChamberFamily, STROKE_CLASSES, type StrokeClass } from './chamber.ts';
import type { RuleSet } from './rule-set.ts';

export type ChamberSize = {
  readonly family: ChamberFamily;
  readonly type: string;
  readonly outsideDiameterMm: number;
  readonly outsideDiameterIn: number;
  readonly strokeClasses: readonly StrokeClass[];
  /** Rated strokes that raise the limit of the long-stroke chamber: worth asking for. */
  readonly decidingRatedStrokesMm: readonly number[];
};

export function chamberSizes(ruleSet: RuleSet): ChamberSize[] {
  return ruleSet.rows.map(({ family, type, outsideDiameterIn, limits }) => ({
    family,
    type,
    outsideDiameterIn,
    outsideDiameterMm: mmFromInches(outsideDiameterIn),
    strokeClasses: STROKE_CLASSES.filter((strokeClass) =>
      limits.some((limit) => limit.strokeClass === strokeClass),
    ),
    decidingRatedStrokesMm: limits
      .map((limit) => limit.ratedStrokeIn)
      .filter((rated) => rated !== null)
      .map(mmFromInches),
  }));
}
