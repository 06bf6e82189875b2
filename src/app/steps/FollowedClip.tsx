import { useStore } from 'zustand';
import { strokeTable } from '../../measurement/stroke-table.ts';
import { ApplicationTable } from '../curve/ApplicationTable.tsx';
import { SaveAnnotated } from '../curve/SaveAnnotated.tsx';
import { SaveTable } from '../curve/SaveTable.tsx';
import { useClipCurve } from '../following/use-clip-curve.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { media, work } from '../stores.ts';
import { FOLLOWING, followingFailureText } from '../words/following.ts';
import { PICTURES } from '../words/steps.ts';
import type { Current } from '../work/current.ts';
import { gaveViews } from '../work/followed-from.ts';

/** What the whole clip says, beside the finding; nothing where none was followed. */
export function FollowedClip({ current }: { readonly current: Current }) {
  const unit = useLengthUnit();
  const answer = useClipCurve(current);
  const files = useStore(media, (store) => store.files);
  const track = current.measurement.followed?.track;
  const capture = current.record.captures.find(({ id }) => id === track?.captureId);
  if (!track || !capture) return null;
  if (!gaveViews(current.measurement)) return <p className="quiet">{FOLLOWING.toPutRight}</p>;
  if (!answer) return <p className="quiet">{FOLLOWING.measuring}</p>;
  if (!answer.ok) return <p className="look">{followingFailureText(answer.failure, unit)}</p>;
  const clip = answer.value;
  const blob = files[capture.sha256];
  return (
    <section className="followed-clip" aria-label={FOLLOWING.heading}>
      <h3>{FOLLOWING.heading}</h3>
      <ApplicationTable measurement={clip} unit={unit} />
      <button
        type="button"
        className="button wide"
        disabled={!blob}
        onClick={() => {
          work.look({ captureId: capture.id, frameIndex: track.seed.index });
          // On a phone the picture is a screen further up.
          scrollTo({ top: 0 });
        }}
      >
        {PICTURES.look}
      </button>
      <SaveTable
        table={() => strokeTable(clip, track.firstIndex)}
        fileName={`${capture.fileName.replace(/\.[^.]*$/, '')}-stroke.csv`}
      />
      {blob ? (
        <SaveAnnotated
          write={async (signal, onProgress) => {
            const { annotatedClip } = await import('../curve/annotated-clip.browser.ts');
            const annotation = { track, measurement: clip, unit };
            return annotatedClip({ capture, blob, annotation, signal, onProgress });
          }}
        />
      ) : null}
    </section>
  );
}
