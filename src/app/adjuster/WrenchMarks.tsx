import { useState } from 'react';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { PlacedPoint } from '../../marks/placement.ts';
import type { WrenchTurn } from '../../record/wheel-end.ts';
import { useFrames } from '../media/use-frames.ts';
import { usePicture } from '../media/use-picture.ts';
import { usePlayedNote } from '../media/use-played-note.ts';
import { work } from '../stores.ts';
import { FrameViewer } from '../viewer/FrameViewer.tsx';
import { WRENCH, WRENCH_POINT_ASKED, WRENCH_POINT_NAMES, WRENCH_POINTS } from '../words/adjuster.ts';
import { pictureFailureText } from '../words/failures-pictures.ts';
import { changeTurn } from './change-check.ts';
import { FollowWrench } from './FollowWrench.tsx';

type Props = {
  readonly capture: Capture;
  readonly wheelEndId: string;
  readonly turn: WrenchTurn;
  readonly index: number;
  /** The only one of its capture. */
  readonly alone: boolean;
};

export function WrenchMarks({ capture, wheelEndId, turn, index, alone }: Props) {
  const [selected, setSelected] = useState<string | null>(null);
  const [gone, setGone] = useState(false);
  const source = useFrames(capture);
  usePlayedNote(capture, source);
  const frames: readonly Frame[] = source?.ok ? source.value.frames : [];
  const frame = capture.kind === 'clip' ? (turn.frame ?? frames[0] ?? null) : null;
  const canShow = capture.kind === 'photo' || frame !== null || (source !== null && !source.ok);
  const { picture, failure } = usePicture(canShow ? source : null, frame);
  const next = WRENCH_POINTS.find((point) => turn[point] === null) ?? null;
  const put = (id: string, point: PlacedPoint | null) => {
    setGone(false);
    changeTurn(wheelEndId, index, { frame, [id]: point });
  };
  // Marks belong to the frame they were set on.
  const lookAt = (chosen: Frame | undefined) => {
    if (!chosen) return;
    if (WRENCH_POINTS.some((point) => turn[point] !== null)) setGone(true);
    changeTurn(wheelEndId, index, { frame: chosen, centre: null, tip: null, pin: null, camshaft: null });
  };
  return (
    <>
      <p className="asking" aria-live="polite">
        {next ? WRENCH_POINT_ASKED[next] : WRENCH.allMarked}
      </p>
      {failure ? <p className="look">{pictureFailureText(failure)}</p> : null}
      <div className="wrench-viewer">
        <FrameViewer
          picture={picture}
          pictureLabel={WRENCH.picture(index + 1, turn.applicationsBefore)}
          marks={WRENCH_POINTS.flatMap((id) => {
            const at = turn[id];
            return at
              ? [{ ...at, id, name: WRENCH_POINT_NAMES[id], selected: id === selected, ...BY_HAND }]
              : [];
          })}
          firstShown={[]}
          drawing={null}
          dimensionText={null}
          placing={next && WRENCH_POINT_NAMES[next]}
          onPlace={(point) => next && put(next, point)}
          onMoveBegin={(id) => {
            work.beginDrag();
            setSelected(id);
          }}
          onMove={put}
          onMoveEnd={() => work.endDrag()}
          onMoveCancel={() => work.cancelDrag()}
          onSelect={setSelected}
          onDelete={(id) => put(id, null)}
        />
      </div>
      {capture.kind === 'clip' ? (
        <>
          <input
            type="range"
            aria-label={WRENCH.frame}
            min={0}
            max={Math.max(0, frames.length - 1)}
            value={frame?.index ?? 0}
            disabled={frames.length === 0}
            // However far it is drawn, one step takes it back; a finger that scrolls the page instead moves nothing.
            onPointerDown={() => work.beginDrag()}
            onPointerUp={() => work.endDrag()}
            onPointerCancel={() => {
              work.cancelDrag();
              setGone(false);
            }}
            onChange={(event) => lookAt(frames[Number(event.target.value)])}
          />
          <p role="status">{gone && next === WRENCH_POINTS[0] ? WRENCH.marksGone : ''}</p>
          <FollowWrench wheelEndId={wheelEndId} capture={capture} turn={turn} alone={alone} />
        </>
      ) : null}
    </>
  );
}

const BY_HAND = { automatic: false, doubtful: false, minor: false };
