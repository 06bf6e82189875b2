import { SIGHTS, type Sight } from '../../finding/over-stroke-mark.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import type { PaintLook } from '../paint/paint-store.ts';
import { type OverStrokeState, usePaintLooks } from '../paint/use-paint-looks.ts';
import { Choice } from '../parts/Choice.tsx';
import { work } from '../stores.ts';
import { PICTURE_LABELS } from '../words/en.ts';
import { PAINT } from '../words/paint.ts';
import { OVER_STROKE } from '../words/steps.ts';
import { type Current, viewOf } from '../work/current.ts';
import { BandColourChoice } from './BandColourChoice.tsx';
import { PaintProposal } from './PaintProposal.tsx';

/** First where paint tells something. */
const STATES = ['applied', 'released'] as const;

type Props = { readonly current: Current; readonly assessment: ShownAssessment };

export function OverStrokeStep({ current, assessment }: Props) {
  const looks = usePaintLooks(current, assessment);
  return (
    <>
      <p>{current.place.cropping ? OVER_STROKE.cropping : OVER_STROKE.sentence}</p>
      {STATES.map((state) => (
        <SightChoice key={state} current={current} state={state} look={looks[state]} />
      ))}
      <BandColourChoice chosen={current.measurement.overStrokeMark.bandColour} />
      <p className="quiet">{OVER_STROKE.note}</p>
    </>
  );
}

type SightProps = {
  readonly current: Current;
  readonly state: OverStrokeState;
  readonly look: PaintLook | null;
};

function SightChoice({ current, state, look }: SightProps) {
  const given = current.measurement.overStrokeMark[state];
  const view = viewOf(current.measurement, state);
  const cropping = current.place.cropping === state;
  const proposal = proposalOf(look);
  const take = (sight: Sight) =>
    work.act({
      type: 'set-over-stroke',
      state,
      sight: {
        sight,
        crop: given?.crop ?? proposal?.crop ?? null,
        proposal: proposal ?? given?.proposal ?? null,
      },
    });
  return (
    <fieldset className="ruled-group">
      <legend>{PICTURE_LABELS[state]}</legend>
      {view ? <PaintProposal state={state} look={look} given={given} /> : null}
      {proposal && proposal.sight !== 'cannot-tell' && !given ? (
        <button type="button" className="button main wide" onClick={() => take(proposal.sight)}>
          {PAINT.confirm[proposal.sight]}
        </button>
      ) : null}
      <div className="row">
        {SIGHTS.map((sight) => (
          <Choice
            key={sight}
            group={`over-stroke-${state}`}
            label={OVER_STROKE[sight]}
            checked={given?.sight === sight}
            onChange={() => take(sight)}
          />
        ))}
      </div>
      {view && given ? (
        <button
          type="button"
          className="button wide"
          aria-pressed={cropping}
          onClick={() => work.crop(cropping ? null : state)}
        >
          {given.crop ? OVER_STROKE.cropAgain : OVER_STROKE.crop}
        </button>
      ) : null}
    </fieldset>
  );
}

/** As the record keeps it. */
function proposalOf(look: PaintLook | null) {
  if (look?.is !== 'done') return null;
  const { sight, confidence, reason, crop } = look.judged;
  return { sight, confidence, reason: reason.code, crop, bandColour: look.bandColour };
}
