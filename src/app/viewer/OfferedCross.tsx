import { useRef } from 'react';
import type { OfferedMark } from './offered-mark.ts';
import { useEachFrame } from './use-each-frame.ts';
import { screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

/** Turned as what an assist set, and broken: it is not a mark yet. */
const CROSS = 'M-14-14-2.5-2.5M2.5 2.5 14 14M-14 14-2.5 2.5M2.5-2.5 14-14';

export function OfferedCross(props: { readonly store: ViewerStore; readonly mark: OfferedMark }) {
  const { store, mark } = props;
  const group = useRef<SVGGElement>(null);
  useEachFrame(store, ({ view }) => {
    if (!view) return;
    const { xCss, yCss } = screenFromFrame(view, mark);
    group.current?.setAttribute('transform', `translate(${xCss} ${yCss})`);
  });
  return (
    <g ref={group} className="viewer-offered">
      {mark.line ? null : (
        <>
          <path className="viewer-edge" d={CROSS} />
          <path className="viewer-line" d={CROSS} />
        </>
      )}
      {mark.name === null ? null : (
        <text className="viewer-name" x="-14" y="-18" textAnchor="end">
          {mark.name}
        </text>
      )}
    </g>
  );
}
