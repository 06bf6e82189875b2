import type { View } from '../../marks/view.ts';
import { useFollowing } from '../following/use-following.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { FOLLOWING, followingFailureText } from '../words/following.ts';
import type { Current } from '../work/current.ts';

type Props = { readonly current: Current; readonly view: View };

/** A view of a clip: its marks followed through all of it. */
export function FollowClip({ current, view }: Props) {
  const { following, begin, stop, measure } = useFollowing(current, view);
  const unit = useLengthUnit();
  const { followed } = current.measurement;
  if (following?.is === 'under-way' || following?.is === 'measuring') {
    const { done, of } = following.is === 'under-way' ? following : { done: 0, of: null };
    const leftS = following.is === 'under-way' ? following.leftS : null;
    return (
      <section className="trials" aria-label={FOLLOWING.heading}>
        <p className="trials-running" role="status">
          <progress aria-label={FOLLOWING.heading} {...(of === null ? {} : { value: done, max: of })} />
          <span>
            {following.is === 'measuring'
              ? FOLLOWING.measuring
              : of === null
                ? FOLLOWING.opening
                : FOLLOWING.underWay(done, of)}
            {leftS === null ? null : `, ${FOLLOWING.left(Math.ceil(leftS))}`}
          </span>
        </p>
        {following.is === 'under-way' ? (
          <button type="button" className="button wide" onClick={stop}>
            {FOLLOWING.stop}
          </button>
        ) : null}
      </section>
    );
  }
  return (
    <section className="trials" aria-label={FOLLOWING.heading}>
      <button
        type="button"
        className={begin && !followed ? 'button main wide' : 'button wide'}
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
        </p>
      ) : (
        <p className="quiet" role="status">
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
