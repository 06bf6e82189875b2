import { work } from '../stores.ts';
import { PICTURES } from '../words/steps.ts';
import type { Current } from '../work/current.ts';

/** The usual way with two photos: a tape held along the rod. Other references, and more of them, are one step on as ever. */
export function TapeShortcut({ current: { measurement } }: { readonly current: Current }) {
  const chosen = Object.values(measurement.references).some((reference) => reference !== null);
  const photos = measurement.views.length > 1 && measurement.views.every(({ frame }) => frame === null);
  if (chosen || !photos) return null;
  return (
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
  );
}
