import { useRef } from 'react';
import type { OfferedMark } from './offered-mark.ts';
import { useEachFrame } from './use-each-frame.ts';
import { screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

/** Where something round may be: of its size at every zoom, open in the middle, broken as what is offered on lines. */
export function OfferedRing(props: {
  readonly store: ViewerStore;
  readonly mark: OfferedMark;
  readonly radiusPx: number;
}) {
  const { store, mark, radiusPx } = props;
  const edge = useRef<SVGCircleElement>(null);
  const line = useRef<SVGCircleElement>(null);
  useEachFrame(store, ({ view }) => {
    if (!view) return;
    const { xCss, yCss } = screenFromFrame(view, mark);
    for (const { current: circle } of [edge, line]) {
      circle?.setAttribute('cx', xCss.toFixed(1));
      circle?.setAttribute('cy', yCss.toFixed(1));
      circle?.setAttribute('r', (view.scale * radiusPx).toFixed(1));
    }
  });
  return (
    <g className="viewer-found-line" data-offered>
      <circle ref={edge} className="viewer-edge" />
      <circle ref={line} className="viewer-line" />
    </g>
  );
}
