import type { ReactNode } from 'react';
import { followsNext } from '../following/follows-next.ts';
import { work } from '../stores.ts';
import { nextStep, PICTURES } from '../words/steps.ts';
import { type Current, viewOf } from '../work/current.ts';

const BOTH = ['released', 'applied'] as const;

type Props = {
  readonly current: Current;
  /** The way on without it: more of known size, or something else. */
  readonly children: ReactNode;
};

/** The usual way: a tape held along the rod, in two photos or in a clip of which one frame is taken. */
export function TapeShortcut({ current, children }: Props) {
  const { views, references } = current.measurement;
  const chosen = Object.values(references).some((reference) => reference !== null);
  const photos =
    views.every(({ frame }) => frame === null) && BOTH.every((state) => viewOf(current.measurement, state));
  const seed = BOTH.find((state) => {
    const view = viewOf(current.measurement, state);
    return view && followsNext(current, view);
  });
  if (chosen || !(photos || seed)) return children;
  return (
    <>
      <button
        type="button"
        className="button main wide"
        onClick={() => {
          const tape = { zeroAtFace: false, unmoved: seed !== undefined, touchesPin: false };
          work.act({ type: 'set-references', references: { tape } });
          work.goTo(`marks-${seed ?? 'released'}`);
        }}
      >
        {seed ? PICTURES.tapeInClip : PICTURES.tapeInBoth}
      </button>
      <button type="button" className="button wide" onClick={() => work.goTo('reference')}>
        {nextStep('reference')}
      </button>
    </>
  );
}
