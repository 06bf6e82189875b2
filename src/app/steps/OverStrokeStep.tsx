import { SIGHTS, type Sight } from '../../finding/over-stroke-mark.ts';
import { Choice } from '../parts/Choice.tsx';
import { work } from '../stores.ts';
import { PICTURE_LABELS } from '../words/en.ts';
import { OVER_STROKE } from '../words/steps.ts';
import { type Current, viewOf } from '../work/current.ts';

const STATES = ['released', 'applied'] as const;

export function OverStrokeStep({ current }: { readonly current: Current }) {
  return (
    <>
      <p>{current.place.cropping ? OVER_STROKE.cropping : OVER_STROKE.sentence}</p>
      {STATES.map((state) => (
        <SightChoice key={state} current={current} state={state} />
      ))}
      <p className="quiet">{OVER_STROKE.note}</p>
    </>
  );
}

type SightProps = { readonly current: Current; readonly state: (typeof STATES)[number] };

function SightChoice({ current, state }: SightProps) {
  const sight = current.measurement.overStrokeMark[state];
  const view = viewOf(current.measurement, state);
  const cropping = current.place.cropping === state;
  const take = (seen: Sight) =>
    work.act({
      type: 'set-over-stroke',
      state,
      sight: { sight: seen, crop: sight?.crop ?? null, proposal: sight?.proposal ?? null },
    });
  return (
    <fieldset className="ruled-group">
      <legend>{PICTURE_LABELS[state]}</legend>
      <div className="row">
        {SIGHTS.map((seen) => (
          <Choice
            key={seen}
            group={`over-stroke-${state}`}
            label={OVER_STROKE[seen]}
            checked={sight?.sight === seen}
            onChange={() => take(seen)}
          />
        ))}
      </div>
      {view && sight ? (
        <button
          type="button"
          className="button wide"
          aria-pressed={cropping}
          onClick={() => work.crop(cropping ? null : state)}
        >
          {sight.crop ? OVER_STROKE.cropAgain : OVER_STROKE.crop}
        </button>
      ) : null}
    </fieldset>
  );
}
