import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { BrakeState } from '../../marks/view.ts';
import { followsNext } from '../following/follows-next.ts';
import { takeView } from '../media/take-view.ts';
import { PICTURES } from '../words/steps.ts';
import { clipTimeText } from '../words/values.ts';
import { type Current, viewOf } from '../work/current.ts';

type Props = {
  readonly current: Current;
  readonly capture: Capture;
  readonly state: BrakeState;
  /** Null while there is none to take. */
  readonly frame: Frame | null;
};

/** Takes the frame that is looked at, and says which was taken. */
export function TakeFrame({ current, capture, state, frame }: Props) {
  const view = viewOf(current.measurement, state);
  const taken = view?.captureId === capture.id ? view.frame : null;
  const comesByItself = current.measurement.views.some((each) => followsNext(current, each));
  const asked = state !== 'pulled' && taken === null && !comesByItself;
  return (
    <button
      type="button"
      className={asked ? 'button main' : 'button'}
      disabled={!frame}
      onClick={() => takeView(state, capture.id, frame)}
    >
      {PICTURES.takeAs(state)}
      {taken && capture.clip ? (
        <span className="quiet hint">
          {PICTURES.takenIs(clipTimeText(taken.timeTicks, capture.clip.ticksPerSecond))}
        </span>
      ) : null}
    </button>
  );
}
