import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import { broughtClose } from '../assists/brought-close.ts';
import { offeredMarks } from '../assists/offered-marks.ts';
import { roughMarks } from '../assists/rough-asked.ts';
import { useAssists } from '../assists/use-assists.ts';
import { useRoughGuess } from '../assists/use-rough.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { useFrames } from '../media/use-frames.ts';
import { usePicture } from '../media/use-picture.ts';
import { usePlayedNote } from '../media/use-played-note.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { useWide } from '../parts/use-wide.ts';
import { media } from '../stores.ts';
import { FrameViewer } from '../viewer/FrameViewer.tsx';
import { PICTURE_LABELS, STATE_NAMES } from '../words/en.ts';
import { askingText } from '../words/marks.ts';
import { MISSING, PICTURES } from '../words/steps.ts';
import { measuredLengthText } from '../words/values.ts';
import { askingFor } from '../work/asking.ts';
import { type Current, viewOf } from '../work/current.ts';
import { markedState } from '../work/steps.ts';
import { graduationStepMm } from '../work/usual-references.ts';
import { aspectOf } from './aspect-of.ts';
import { markHandlers } from './mark-handlers.ts';
import { overStrokeCrop } from './over-stroke-crop.ts';
import { shownFirst } from './shown-first.ts';
import { usePictureNotice } from './use-picture-notice.ts';
import { viewerMarks } from './viewer-marks.ts';

type Props = { readonly current: Current; readonly assessment: ShownAssessment; readonly state: BrakeState };

export function PictureView({ current, assessment, state }: Props) {
  const unit = useLengthUnit();
  const wide = useWide();
  const view = viewOf(current.measurement, state);
  const capture = current.record.captures.find(({ id }) => id === view?.captureId) ?? null;
  const source = useFrames(capture);
  usePlayedNote(capture, source);
  const { picture, failure } = usePicture(source, view?.frame ?? null);
  usePictureNotice(capture, failure);
  const missing = useStore(media, ({ files }) => capture !== null && files[capture.sha256] === null);

  const measured = assessment.measurement.ok ? assessment.measurement.value : null;
  const { shownStrokeMm } = assessment;
  const drawing = (shownStrokeMm && measured?.drawings.find((each) => each.state === state)) ?? null;
  const { step, selectedMarkId } = current.place;
  const assists = useAssists(current.measurement, state);
  const rough = useRoughGuess(view, assists);
  const close = useStore(broughtClose, (store) => (view && store.close[pictureKey(view)]) ?? null);
  const asking = askingFor(current, state, graduationStepMm(unit));
  return (
    <figure className="picture" data-state={state} style={capture ? aspectOf(capture) : undefined}>
      {wide ? <figcaption>{STATE_NAMES[state]}</figcaption> : null}
      {view ? (
        <FrameViewer
          // These two bring close what they are about, the stroke's dimension when it is there; while marking, the picture stays as the hand left it.
          key={step === 'finding' || step === 'over-stroke' ? `${step} ${drawing !== null}` : 'work'}
          picture={picture}
          pictureLabel={PICTURE_LABELS[state]}
          whyNone={missing ? MISSING.picture(PICTURE_LABELS[state]) : null}
          marks={viewerMarks(view, { selectedMarkId, askedKind: asking?.kind ?? null }, measured, unit)}
          offered={
            markedState(step) === state
              ? [...(rough ? roughMarks(rough) : []), ...offeredMarks(assists, unit)]
              : []
          }
          close={close}
          firstShown={shownFirst(current.place, view, drawing)}
          drawing={drawing}
          dimensionText={shownStrokeMm && measuredLengthText(shownStrokeMm, unit)}
          placing={asking && askingText(asking, unit)}
          cropMode={overStrokeCrop(current, state)}
          {...markHandlers(current, state, asking)}
        />
      ) : (
        <p className="no-picture">{PICTURES.none}</p>
      )}
    </figure>
  );
}
