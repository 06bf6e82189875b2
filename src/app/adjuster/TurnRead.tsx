import { isToldWell } from '../../measurement/adjuster-turn.ts';
import type { AdjusterOutcome } from '../../record/adjuster-outcome.ts';
import { ADJUSTER, DECIDED, eachText, inAllText, reasonText, turnText, WRENCH } from '../words/adjuster.ts';
import { ClockFace } from './ClockFace.tsx';

type Props = {
  readonly outcome: AdjusterOutcome;
  readonly saidStill: boolean;
  /** Applications, as counted. */
  readonly made: number;
};

export function TurnRead({ outcome, saidStill, made }: Props) {
  const { turn, decision } = outcome;
  const advice = isToldWell(turn) ? null : toTellBetter(turn);
  const last = turn.places.at(-1)?.applicationsBefore ?? 0;
  return (
    <div className="turn-read">
      <ClockFace turn={turn} putOver={advice === WRENCH.putOver} />
      <div className="form">
        <p className="stroke-value">{turnText(turn.totalRad)}</p>
        <p>{inAllText(turn.applications)}</p>
        <p className="quiet">{eachText(turn.perApplicationRad)}</p>
        <p className={decision.answer === 'does-not-take-up' ? 'outcome look' : 'outcome'} role="status">
          {DECIDED[decision.answer]}
        </p>
        {decision.reasons.map((reason) => (
          <p key={reason}>{reasonText(reason)}</p>
        ))}
        {decision.answer === 'takes-up' ? <p>{ADJUSTER.takesUp}</p> : null}
        {made > last ? <p className="note">{WRENCH.notToTheLast(made, last)}</p> : null}
        {saidStill && !turn.cameraStood ? <p className="note">{WRENCH.moved}</p> : null}
        {advice ? <p className="note">{advice}</p> : null}
      </div>
    </div>
  );
}

function toTellBetter({ cameraStood, putOver }: AdjusterOutcome['turn']): string {
  if (!cameraStood) return WRENCH.stand;
  return putOver === 0 ? WRENCH.putOver : WRENCH.putOverMore;
}
