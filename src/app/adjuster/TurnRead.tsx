import type { AdjusterOutcome } from '../../record/adjuster-outcome.ts';
import { DECIDED, eachText, inAllText, reasonText, turnText } from '../words/adjuster.ts';
import { ClockFace } from './ClockFace.tsx';

export function TurnRead({ outcome }: { readonly outcome: AdjusterOutcome }) {
  const { turn, decision } = outcome;
  return (
    <div className="turn-read">
      <ClockFace turn={turn} />
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
      </div>
    </div>
  );
}
