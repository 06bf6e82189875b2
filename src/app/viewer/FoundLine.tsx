import { useRef } from 'react';
import { alongLine, isRoomForDots, type LineSort } from './found-line.ts';
import { useEachFrame } from './use-each-frame.ts';
import { type FramePoint, screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

/** Found marks on one line: broken and thin, so that it is seen to follow its edge where dozens of crosses would cover it. */
export function FoundLine(props: {
  readonly store: ViewerStore;
  readonly marks: readonly (FramePoint & { readonly line?: LineSort | null })[];
  readonly sort: LineSort;
  readonly offered?: boolean;
}) {
  const edge = useRef<SVGPathElement>(null);
  const line = useRef<SVGPathElement>(null);
  const dotEdges = useRef<SVGPathElement>(null);
  const dots = useRef<SVGPathElement>(null);
  useEachFrame(props.store, ({ view }) => {
    if (!view) return;
    const places = alongLine(props.marks, props.sort).map((mark) => screenFromFrame(view, mark));
    const texts = places.map(({ xCss, yCss }) => `${xCss.toFixed(1)} ${yCss.toFixed(1)}`);
    const along = texts.length > 1 ? `M${texts.join('L')}` : '';
    const each = isRoomForDots(places) ? texts.map((text) => `M${text}h0`).join('') : '';
    for (const path of [edge, line]) path.current?.setAttribute('d', along);
    for (const path of [dotEdges, dots]) path.current?.setAttribute('d', each);
  });
  return (
    <g className="viewer-found-line" data-offered={props.offered || undefined}>
      <path ref={edge} className="viewer-edge" />
      <path ref={line} className="viewer-line" />
      <path ref={dotEdges} className="viewer-dot-edge" />
      <path ref={dots} className="viewer-dot" />
    </g>
  );
}
