/** What a wheel end's adjuster check comes to by its pictures, beside what the person answers. Computed anew each time, never kept. */
import { cameraPrior } from '../adjustment/camera-prior.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { type AdjusterDecision, decideAdjuster } from '../finding/adjuster-decision.ts';
import { type AdjusterTurn, type AdjusterTurnFailure, adjusterTurn } from '../measurement/adjuster-turn.ts';
import type { WrenchPicture } from '../measurement/wrench-directions.ts';
import type { InspectionRecord } from './record.ts';
import type { AdjusterCheck } from './wheel-end.ts';

export type AdjusterOutcome = { readonly turn: AdjusterTurn; readonly decision: AdjusterDecision };

export function adjusterOutcome(
  { captures }: Pick<InspectionRecord, 'captures'>,
  { turns, cameraStill, backedOff }: AdjusterCheck,
): Result<AdjusterOutcome, AdjusterTurnFailure> {
  const pictures = turns.flatMap((turn): WrenchPicture[] => {
    const { applicationsBefore, centre, tip, pin, camshaft } = turn;
    const capture = captures.find(({ id }) => id === turn.captureId);
    if (!centre || !tip || !capture) return [];
    const { focalPx, uLnFocal } = cameraPrior(capture, null);
    const arm = pin && camshaft ? { pin, camshaft } : null;
    const middlePx = [capture.widthPx / 2, capture.heightPx / 2] as const;
    return [{ applicationsBefore, focalPx, uLnFocal, middlePx, centre, tip, arm }];
  });
  const turn = adjusterTurn(pictures, cameraStill);
  if (!turn.ok) return fail(turn.failure);
  return ok({ turn: turn.value, decision: decideAdjuster(turn.value, backedOff) });
}
