import type { ReactNode } from 'react';
import { work } from '../stores.ts';
import { nextStep, PICTURES } from '../words/steps.ts';
import type { Current } from '../work/current.ts';

type Props = {
  readonly current: Current;
  /** The way on without it: more of known size, or something else. */
  readonly children: ReactNode;
};

/** The usual way with two photos: a tape held along the rod. */
export function TapeShortcut({ current: { measurement }, children }: Props) {
  const chosen = Object.values(measurement.references).some((reference) => reference !== null);
  const photos = measurement.views.length > 1 && measurement.views.every(({ frame }) => frame === null);
  if (chosen || !photos) return children;
  return (
    <>
      <button
        type="button"
        className="button main wide"
        onClick={() => {
          const tape = { zeroAtFace: false, unmoved: false, touchesPin: false };
          work.act({ type: 'set-references', references: { tape } });
          work.goTo('marks-released');
        }}
      >
        {PICTURES.tapeInBoth}
      </button>
      <button type="button" className="button wide" onClick={() => work.goTo('reference')}>
        {nextStep('reference')}
      </button>
    </>
  );
}
