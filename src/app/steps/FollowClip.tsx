import { useEffect } from 'react';
import type { Track } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import { FollowUnderWay } from '../following/FollowUnderWay.tsx';
import { makeFollowingReady } from '../following/follow-clip.ts';
import { useFollowing } from '../following/use-following.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { FOLLOWING, followingFailureText } from '../words/following.ts';
import type { Current } from '../work/current.ts';
import { gaveViews } from '../work/followed-from.ts';

type Props = { readonly current: Current; readonly view: View };

/** Marked since: what was followed knows nothing of it. */
const isEndLeftOut = ({ marks }: View, { points }: Track): boolean =>
  marks.some(({ kind, id }) => kind === 'camshaft-end' && !points.some(({ markId }) => markId === id));

/** A view of a clip: its marks followed through all of it. */
export function FollowClip({ current, view }: Props) {
  const { following, begin, measure } = useFollowing(current, view);
  const unit = useLengthUnit();
  const mayBegin = begin !== null && following === null;
  // While the person looks at the marks there is time for it.
  useEffect(() => {
    if (mayBegin) makeFollowingReady();
  }, [mayBegin]);
  const { followed } = current.measurement;
  const isLeftOut = followed !== null && isEndLeftOut(view, followed.track);
  if (following?.is === 'under-way' || following?.is === 'measuring')
    return <FollowUnderWay following={following} />;
  return (
    <section className="trials" aria-label={FOLLOWING.heading}>
      <button
        type="button"
        className={begin && (!followed || isLeftOut) ? 'button main wide' : 'button wide'}
        disabled={!begin}
        onClick={() => begin?.()}
      >
        {following?.is === 'stopped' ? FOLLOWING.goOn : followed ? FOLLOWING.again : FOLLOWING.begin}
      </button>
      {following?.is === 'stopped' ? (
        <>
          <p className="look" role="status">
            {FOLLOWING.stopped(following.done, following.of)}
          </p>
          <button type="button" className="button wide" onClick={measure}>
            {FOLLOWING.measure}
          </button>
        </>
      ) : following?.is === 'failed' ? (
        <p className="look" role="status">
          {followingFailureText(following.failure, unit)}
          {followed ? ` ${FOLLOWING.toPutRight}` : null}
        </p>
      ) : followed && !gaveViews(current.measurement) ? (
        <p className="look" role="status">
          {FOLLOWING.toPutRight}
        </p>
      ) : (
        <p className="quiet" role="status">
          {isLeftOut ? `${FOLLOWING.leftOut} ` : null}
          {followed
            ? FOLLOWING.done(followed.track.timeTicks.length, followed.sideViews.length)
            : begin
              ? `${FOLLOWING.why} ${FOLLOWING.sway}`
              : FOLLOWING.needs}
        </p>
      )}
    </section>
  );
}
