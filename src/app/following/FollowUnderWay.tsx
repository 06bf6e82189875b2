import { FOLLOWING } from '../words/following.ts';
import type { Following } from './followings-store.ts';

type Props = { readonly following: Extract<Following, { readonly is: 'under-way' | 'measuring' }> };

/** How far it is, and a way to stop it. */
export function FollowUnderWay({ following }: Props) {
  const under = following.is === 'under-way' ? following : null;
  const { done, of, leftS } = under ?? { done: 0, of: null, leftS: null };
  return (
    <section className="trials" aria-label={FOLLOWING.heading}>
      <p className="trials-running" role="status">
        <progress aria-label={FOLLOWING.heading} {...(of === null ? {} : { value: done, max: of })} />
        <span>
          {under === null
            ? FOLLOWING.measuring
            : of === null
              ? FOLLOWING.opening
              : FOLLOWING.underWay(done, of)}
          {leftS === null ? null : `, ${FOLLOWING.left(Math.ceil(leftS))}`}
        </span>
      </p>
      {under ? (
        <button type="button" className="button wide" onClick={() => under.control.abort()}>
          {FOLLOWING.stop}
        </button>
      ) : null}
    </section>
  );
}
