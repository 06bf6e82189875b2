import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import { BRAKE_STATES } from '../../marks/view.ts';
import type { Assessment } from '../../record/results.ts';
import { StrokeCurve } from '../curve/StrokeCurve.tsx';
import { useFrames } from '../media/use-frames.ts';
import { usePicture } from '../media/use-picture.ts';
import { usePlayedNote } from '../media/use-played-note.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { FrameViewer } from '../viewer/FrameViewer.tsx';
import { CLIP } from '../words/steps.ts';
import { clipTimeText } from '../words/values.ts';
import type { Current } from '../work/current.ts';
import { aspectOf } from './aspect-of.ts';
import { PutRightControls } from './PutRightControls.tsx';
import { PICTURE_ONLY } from './picture-only.ts';
import { TakeFrame } from './TakeFrame.tsx';
import { useFollowedFrame } from './use-followed-frame.tsx';
import { usePictureNotice } from './use-picture-notice.ts';
import { usePutRight } from './use-put-right.ts';

type Props = {
  readonly current: Current;
  readonly assessment: Assessment;
  readonly capture: Capture;
  readonly frameIndex: number;
};

const JUMPS = [-10, -1, 1, 10] as const;

/** Looks through a clip frame by frame: the track's own frames and times, no frame rate. */
export function ClipChooser({ current, assessment, capture, frameIndex }: Props) {
  const unit = useLengthUnit();
  const source = useFrames(capture);
  usePlayedNote(capture, source);
  const frames: readonly Frame[] = source?.ok ? source.value.frames : [];
  const last = Math.max(0, frames.length - 1);
  const frame = frames[Math.min(frameIndex, last)] ?? null;
  const { picture, failure } = usePicture(frame || (source && !source.ok) ? source : null, frame);
  usePictureNotice(capture, failure);

  const followed = useFollowedFrame(current, assessment, capture, frame);
  const putRight = usePutRight(current, capture, frame, followed);
  const draft = putRight?.draft ?? null;
  const lookAt = (index: number) =>
    work.look({ captureId: capture.id, frameIndex: Math.min(last, Math.max(0, index)) });
  const time = frame && capture.clip ? clipTimeText(frame.timeTicks, capture.clip.ticksPerSecond) : '';
  const at = frame ? `${CLIP.frameOf(frame.index, frames.length)}, ${time}` : CLIP.opening;

  return (
    <div className="clip-chooser" style={aspectOf(capture)}>
      <FrameViewer
        {...PICTURE_ONLY}
        picture={picture}
        pictureLabel={CLIP.picture(capture.fileName)}
        over={draft ? null : (followed?.over ?? null)}
        {...draft?.viewer}
      />
      <div className="clip-controls">
        {putRight ? <PutRightControls putRight={putRight} /> : null}
        {draft ? null : (
          <>
            {followed?.clip ? (
              <StrokeCurve
                measurement={followed.clip}
                limitMm={followed.limitMm}
                unit={unit}
                frame={followed.at}
                onFrame={(at) => lookAt(followed.firstIndex + at)}
              />
            ) : (
              <input
                type="range"
                aria-label={CLIP.position}
                aria-valuetext={at}
                disabled={!frame}
                min={0}
                max={last}
                value={Math.min(frameIndex, last)}
                onChange={(event) => lookAt(Number(event.target.value))}
              />
            )}
            <ClipSteps at={at} disabled={!frame} onStep={(jump) => lookAt(frameIndex + jump)} />
            {source?.ok && source.value.played ? <p className="look">{CLIP.played}</p> : null}
            <div className="clip-takes">
              {BRAKE_STATES.map((state) => (
                <TakeFrame
                  key={state}
                  current={current}
                  capture={capture}
                  state={state}
                  frame={picture && frame}
                />
              ))}
              <button type="button" className="button" onClick={() => work.look(null)}>
                {CLIP.end}
              </button>
            </div>
          </>
        )}
      </div>
    </div>
  );
}

type StepsProps = {
  /** Which frame it is, and when. */
  readonly at: string;
  readonly disabled: boolean;
  readonly onStep: (frames: number) => void;
};

function ClipSteps({ at, disabled, onStep }: StepsProps) {
  return (
    <div className="clip-steps">
      {JUMPS.map((jump) => (
        <button
          key={jump}
          type="button"
          className="button"
          aria-label={CLIP.step(jump)}
          disabled={disabled}
          onClick={() => onStep(jump)}
        >
          {jump > 0 ? `+${jump}` : `−${-jump}`}
        </button>
      ))}
      <output className="clip-time">{at}</output>
    </div>
  );
}
