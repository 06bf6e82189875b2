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
      <path className="viewer-edge" d={CROSS} />
      <path className="viewer-line" d={CROSS} />
    </g>
  );
}
