import { type ComponentType, useEffect, useState } from 'react';
import type { LaterScreen } from './later-screen.ts';

type Props<Given extends object> = { readonly screen: LaterScreen<Given>; readonly given: Given };

/** React's own way to wait (lazy, Suspense) shows what it waited for 300 ms late, however quickly it came. */
export function Later<Given extends object>({ screen, given }: Props<Given>) {
  const [Shown, setShown] = useState<ComponentType<Given> | null>(screen.fetched);
  useEffect(() => {
    screen.fetch().then(
      (fetched) => setShown(() => fetched),
      (thrown) =>
        setShown(() => {
          // Thrown while it is drawn: the error boundary tells of it.
          throw thrown;
        }),
    );
  }, [screen]);
  return Shown ? <Shown {...given} /> : null;
}
