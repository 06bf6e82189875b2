import type { Frame } from '../../frames/frame.ts';
import type { BrakeState } from '../../marks/view.ts';
import { notices, work } from '../stores.ts';
import { PICTURES } from '../words/steps.ts';
import { currentOf, viewOf } from '../work/current.ts';

const TOPIC = 'marks gone';

/** Takes a picture for a state. Where the marks of the picture before it go with that, says so: undo brings both back. */
export function takeView(state: BrakeState, captureId: string, frame: Frame | null): void {
  const before = markCount(state);
  work.act({ type: 'take-view', state, captureId, frame });
  if (before > 0 && markCount(state) === 0) notices.tell(TOPIC, PICTURES.marksGone);
  else notices.clear(TOPIC);
}

function markCount(state: BrakeState): number {
  const { open } = work.getState();
  const current = open && currentOf(open);
  return (current && viewOf(current.measurement, state)?.marks.length) ?? 0;
}
