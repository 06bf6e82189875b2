import { useStore } from 'zustand';
import type { Capture } from '../../captures/capture.ts';
import type { WrenchTurn } from '../../record/wheel-end.ts';
import { FollowUnderWay } from '../following/FollowUnderWay.tsx';
import { followings } from '../following/followings-store.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { media } from '../stores.ts';
import { WRENCH } from '../words/adjuster.ts';
import { FOLLOWING, followingFailureText } from '../words/following.ts';
import { followWrench, wrenchKey } from './run-wrench.ts';
import { markedWrench } from './wrench-plan.ts';

type Props = {
  readonly wheelEndId: string;
  readonly capture: Capture;
  readonly turn: WrenchTurn;
  /** No other picture is of this clip: followed again, each rest would be there twice. */
  readonly alone: boolean;
};

/** A clip of the wrench: the marks of one frame followed through all of it. */
export function FollowWrench({ wheelEndId, capture, turn, alone }: Props) {
  const key = wrenchKey(wheelEndId, turn);
  const following = useStore(followings, (store) => store.followings[key] ?? null);
  const file = useStore(media, (store) => store.files[capture.sha256]);
  const unit = useLengthUnit();
  if (following?.is === 'under-way' || following?.is === 'measuring')
    return <FollowUnderWay following={following} />;
  const ready = alone && file && turn.frame && markedWrench(turn);
  return (
    <section className="trials" aria-label={FOLLOWING.heading}>
      <button
        type="button"
        className={ready ? 'button main wide' : 'button wide'}
        disabled={!ready}
        onClick={() => file && void followWrench({ key, wheelEndId, capture, file, turn })}
      >
        {FOLLOWING.begin}
      </button>
      {following?.is === 'failed' ? (
        <p className="look" role="status">
          {followingFailureText(following.failure, unit)}
        </p>
      ) : (
        <p className="quiet">{ready ? WRENCH.clip : alone ? WRENCH.clipNeeds : WRENCH.clipTaken}</p>
      )}
    </section>
  );
}
