import type { Capture } from '../../captures/capture.ts';
import { BRAKE_STATES } from '../../marks/view.ts';
import { takeView } from '../media/take-view.ts';
import { work } from '../stores.ts';
import { STATE_NAMES } from '../words/en.ts';
import { PICTURES } from '../words/steps.ts';
import { clipTimeText, sizeText } from '../words/values.ts';
import { capturesHere } from '../work/captures-here.ts';
import type { Current } from '../work/current.ts';

/** Every file that may be meant here, with what it was taken as; photos are taken here, clips are looked through. */
export function CaptureList({ current }: { readonly current: Current }) {
  const captures = capturesHere(current);
  if (captures.length === 0) return null;
  return (
    <ul className="ruled" aria-label={PICTURES.files}>
      {captures.map((capture) => (
        <li key={capture.id}>
          <p>
            {capture.fileName}{' '}
            <span className="quiet">
              {capture.widthPx} × {capture.heightPx}, {sizeText(capture.sizeBytes)}
            </span>
          </p>
          <p className="quiet">
            {takenAs(current, capture) || (capture.kind === 'clip' ? PICTURES.notTaken : PICTURES.takeItAs)}
          </p>
          {capture.kind === 'clip' ? (
            <LookButton current={current} capture={capture} />
          ) : (
            <TakeButtons current={current} capture={capture} />
          )}
        </li>
      ))}
    </ul>
  );
}

type Props = { readonly current: Current; readonly capture: Capture };

function LookButton({ current, capture }: Props) {
  const { chooser } = current.place;
  if (chooser?.captureId === capture.id) return null;
  return (
    <button
      type="button"
      className="button"
      onClick={() => work.look({ captureId: capture.id, frameIndex: 0 })}
    >
      {PICTURES.look}
    </button>
  );
}

/** Only for a photo that is not taken yet: it may replace one that is. */
function TakeButtons({ current, capture }: Props) {
  if (takenAs(current, capture) !== '') return null;
  return (
    <div className="row">
      {BRAKE_STATES.map((state) => (
        <button
          key={state}
          type="button"
          className="button"
          aria-label={PICTURES.takeAs(state)}
          onClick={() => takeView(state, capture.id, null)}
        >
          {STATE_NAMES[state]}
        </button>
      ))}
    </div>
  );
}

function takenAs({ measurement }: Current, capture: Capture): string {
  const clip = capture.clip;
  return measurement.views
    .filter(({ captureId }) => captureId === capture.id)
    .map(({ state, frame }) =>
      frame && clip
        ? PICTURES.takenAt(state, clipTimeText(frame.timeTicks, clip.ticksPerSecond))
        : PICTURES.taken(state),
    )
    .join(', ');
}
