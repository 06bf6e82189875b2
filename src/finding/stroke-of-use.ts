/**
 * Whether a stroke is known well enough to be shown as a number.
 *
 * Rule     its U95 is at most the limit, the highest where several are possible; without a limit, at most the highest that is
 *          published. Beyond that the stroke may be none or twice the limit: a number would only lead astray. It changes no
 *          finding: a stroke so uncertain is not decided in any case.
 */
import { mmFromInches } from '../basics/units.ts';
import type { WithU } from '../measurement/measured.ts';

/** The highest limit of the rule set that comes with the program. */
export const HIGHEST_LIMIT_MM = mmFromInches(3);

export function strokeOfUse(stroke: WithU | null, limitsMm: readonly number[]): WithU | null {
  const mostMm = limitsMm.length > 0 ? Math.max(...limitsMm) : HIGHEST_LIMIT_MM;
  return stroke && stroke.U95 <= mostMm ? stroke : null;
}
