import { useEffect, useRef } from 'react';
import type { Sight } from '../../finding/over-stroke-mark.ts';
import type { PaintLook } from '../paint/paint-store.ts';
import type { OverStrokeState } from '../paint/use-paint-looks.ts';
import { PAINT, paintFailureText, paintReasonText, proposalText } from '../words/paint.ts';

type Props = {
  readonly state: OverStrokeState;
  readonly look: PaintLook | null;
  /** Which sight the person has given, and what had been proposed before. */
  readonly given: { readonly sight: Sight; readonly proposal: { readonly sight: Sight } | null } | null;
};

/** The picture first, then what the tool sees in it and why. */
export function PaintProposal({ state, look, given }: Props) {
  if (!look) return <p className="quiet">{PAINT.needs}</p>;
  if (look.is === 'failed') return <p className="look">{paintFailureText(look.failure)}</p>;
  if (look.is === 'under-way')
    return (
      <p className="quiet" role="status">
        {PAINT.underWay}
      </p>
    );
  const { judged, shown } = look;
  return (
    <>
      <PaintCrop picture={shown} label={PAINT.shown(state)} />
      <p role="status">
        <strong>{proposalText(judged)}</strong> {paintReasonText(judged.reason)}
      </p>
      {given?.proposal ? (
        <p className="quiet">{given.proposal.sight === given.sight ? PAINT.agreed : PAINT.overruled}</p>
      ) : null}
    </>
  );
}

function PaintCrop({ picture, label }: { readonly picture: ImageBitmap; readonly label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => canvas.current?.getContext('2d')?.drawImage(picture, 0, 0), [picture]);
  return (
    <canvas
      ref={canvas}
      className="paint-crop"
      role="img"
      aria-label={label}
      width={picture.width}
      height={picture.height}
    />
  );
}
