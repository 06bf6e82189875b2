import { BRAKE_STATES } from '../../marks/view.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { useWide } from '../parts/use-wide.ts';
import { work } from '../stores.ts';
import { PICTURE_SWITCH, STATE_NAMES } from '../words/en.ts';
import { type Current, viewOf } from '../work/current.ts';
import { markedState } from '../work/steps.ts';
import { ClipChooser } from './ClipChooser.tsx';
import { PictureView } from './PictureView.tsx';

type Props = { readonly current: Current; readonly assessment: ShownAssessment };

/** Both pictures side by side where there is room, else one with a switch, while marking the strip of steps. A clip being looked through takes the whole place. */
export function Pictures({ current, assessment }: Props) {
  const wide = useWide();
  const { record, measurement, place } = current;
  const clip = record.captures.find(({ id }) => id === place.chooser?.captureId);
  if (clip && place.chooser)
    return (
      <div className="pictures">
        <ClipChooser
          current={current}
          assessment={assessment}
          capture={clip}
          frameIndex={place.chooser.frameIndex}
        />
      </div>
    );
  const states = BRAKE_STATES.filter((state) => state !== 'pulled' || viewOf(measurement, state));
  const marking = markedState(place.step);
  const shown = wide ? states : states.filter((state) => state === place.shown);
  return (
    <div className="pictures" data-marking={marking ?? undefined}>
      {wide || marking ? null : (
        <fieldset className="picture-switch">
          <legend className="unseen">{PICTURE_SWITCH}</legend>
          {states.map((state) => (
            <button
              key={state}
              type="button"
              aria-pressed={state === place.shown}
              onClick={() => work.show(state)}
            >
              {STATE_NAMES[state]}
            </button>
          ))}
        </fieldset>
      )}
      {shown.map((state) => (
        <PictureView key={state} current={current} assessment={assessment} state={state} />
      ))}
    </div>
  );
}
