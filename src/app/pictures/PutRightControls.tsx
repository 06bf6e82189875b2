import { FollowUnderWay } from '../following/FollowUnderWay.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { followingFailureText, PUT_RIGHT } from '../words/following.ts';
import type { PutRight } from './use-put-right.ts';

/** A frame of a followed clip put right: begin, drag, follow on; then how far that is. */
export function PutRightControls({ putRight }: { readonly putRight: PutRight }) {
  const unit = useLengthUnit();
  const { following, begin, draft } = putRight;
  if (following?.is === 'under-way' || following?.is === 'measuring')
    return <FollowUnderWay following={following} />;
  if (draft)
    return (
      <section className="put-right" aria-label={PUT_RIGHT.begin}>
        <p>{PUT_RIGHT.sentence}</p>
        <div className="put-right-choices">
          <button
            type="button"
            className="button main"
            disabled={!draft.follow}
            onClick={() => draft.follow?.()}
          >
            {PUT_RIGHT.follow}
          </button>
          <button type="button" className="button" onClick={draft.leave}>
            {PUT_RIGHT.leave}
          </button>
        </div>
      </section>
    );
  return (
    <section className="put-right" aria-label={PUT_RIGHT.begin}>
      {following?.is === 'failed' ? (
        <p className="look" role="status">
          {followingFailureText(following.failure, unit)}
        </p>
      ) : null}
      <button type="button" className="button wide" disabled={!begin} onClick={() => begin?.()}>
        {begin ? PUT_RIGHT.begin : PUT_RIGHT.atSeed}
      </button>
    </section>
  );
}
