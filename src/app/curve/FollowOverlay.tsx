import { useMemo, useRef } from 'react';
import type { Track } from '../../marks/track.ts';
import type { StrokeDrawing } from '../../measurement/measurement.ts';
import { StrokeDimension } from '../viewer/StrokeDimension.tsx';
import { textWidthCss } from '../viewer/text-width.ts';
import { useEachFrame } from '../viewer/use-each-frame.ts';
import type { View } from '../viewer/view-transform.ts';
import type { ViewerStore } from '../viewer/viewer-store.ts';
import { notSeenText } from '../words/curve.ts';
import { CROSSES, crossesPath } from './follow-crosses.ts';
import { followLines } from './follow-lines.ts';
import { followStroke } from './follow-stroke.ts';

type Props = {
  /** Of the viewer that shows the frame: the overlay follows its zoom. */
  readonly store: ViewerStore;
  readonly track: Track;
  /** Counted from the track's first. */
  readonly frame: number;
  /** Of this frame. */
  readonly drawing: StrokeDrawing | null;
  /** The stroke so far, with its unit and u; null where it is not known. */
  readonly text: string | null;
};

/** What was followed, over the picture of any frame. Not touched: taps and drags are the viewer's. */
export function FollowOverlay({ store, track, frame, drawing, text }: Props) {
  const overlay = useRef<SVGSVGElement>(null);
  const value = useRef<SVGTextElement>(null);
  const lines = useMemo(() => followLines(track, frame, drawing), [track, frame, drawing]);
  const { crosses, unseen } = lines;
  useEachFrame(store, ({ view }) => {
    if (!view || !overlay.current) return;
    for (const path of overlay.current.querySelectorAll<SVGPathElement>('[data-crosses]'))
      path.setAttribute('d', crossesPath(view, crosses, path.dataset.crosses as keyof typeof CROSSES));
  });

  const stroke = (view: View) => value.current && followStroke(view, lines, textWidthCss(value.current));
  return (
    <svg ref={overlay} className="viewer-overlay follow-overlay" aria-hidden="true">
      <Crosses of="still" />
      {drawing && text !== null ? (
        <StrokeDimension store={store} stroke={stroke} text={text} textRef={value} />
      ) : null}
      <Crosses of="moving" />
      {unseen.map((kind, index) => (
        <text key={kind} className="viewer-name" x="12" y={28 + 26 * index}>
          {notSeenText(kind)}
        </text>
      ))}
    </svg>
  );
}

/** What stands still lies beneath the dimension and its value, what moves above them. */
function Crosses({ of }: { readonly of: keyof typeof CROSSES }) {
  return (
    <>
      <path data-crosses={of} className="follow-edge" strokeWidth={CROSSES[of].edgeCss} />
      <path data-crosses={of} className="follow-core" strokeWidth={CROSSES[of].coreCss} />
    </>
  );
}
