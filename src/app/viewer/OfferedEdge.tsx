import { useRef } from 'react';
import { useEachFrame } from './use-each-frame.ts';
import { type FramePoint, screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

/** An edge that was found, as it runs: broken as what is offered on lines. */
export function OfferedEdge(props: { readonly store: ViewerStore; readonly edge: readonly FramePoint[] }) {
  const rim = useRef<SVGPathElement>(null);
  const line = useRef<SVGPathElement>(null);
  useEachFrame(props.store, ({ view }) => {
    if (!view) return;
    const places = props.edge.map((point) => screenFromFrame(view, point));
    const path = `M${places.map(({ xCss, yCss }) => `${xCss.toFixed(1)} ${yCss.toFixed(1)}`).join('L')}`;
    for (const { current } of [rim, line]) current?.setAttribute('d', path);
  });
  return (
    <g className="viewer-found-line" data-offered>
      <path ref={rim} className="viewer-edge" />
      <path ref={line} className="viewer-line" />
    </g>
  );
}
