import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import { media } from '../stores.ts';
import type { Current } from '../work/current.ts';
import { type Following, followings } from './followings-store.ts';
import { follow, followable, leftBehind, measureFollowed } from './run-following.ts';

export type FollowingNow = {
  readonly following: Following | null;
  /** Null: a mark or the file is not there. */
  readonly begin: (() => void) | null;
  /** With what was followed until it was stopped. */
  readonly measure: () => void;
};

/** What a reload broke off goes on by itself; what a person stopped waits. */
export function useFollowing(current: Current, view: View): FollowingNow {
  const files = useStore(media, (store) => store.files);
  const one = followable(current, view, files);
  const key = one?.key ?? null;
  const following = useStore(followings, (store) => (key === null ? null : (store.followings[key] ?? null)));
  const followed = current.measurement.followed !== null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each key; the rest is what the key names.
  useEffect(() => {
    if (!one || followed) return;
    let left = false;
    void leftBehind(one.key).then((kept) => {
      if (left || !kept || followings.getState().followings[one.key]) return;
      const done = 1 + kept.sights.forwards.length + kept.sights.backwards.length;
      if (kept.stopped) followings.set(one.key, { is: 'stopped', done, of: kept.timeTicks.length });
      else void follow(current, one);
    });
    return () => {
      left = true;
    };
  }, [key, followed]);

  return {
    following,
    begin: one && (() => void follow(current, one)),
    measure: () => {
      if (one) void leftBehind(one.key).then((kept) => kept && measureFollowed(current, one, kept));
    },
  };
}
