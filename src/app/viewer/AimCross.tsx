import { useRef } from 'react';
import { SELECTED_CROSS } from './MarkCross.tsx';
import { useEachFrame } from './use-each-frame.ts';
import { middleOfScreen, screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

/** The mark that is not there yet: under the finger, or in the middle for who works by keys. */
export function AimCross({ store }: { readonly store: ViewerStore }) {
  const under = useRef<SVGGElement>(null);
  const middle = useRef<SVGGElement>(null);
  useEachFrame(store, ({ view, aim }) => {
    if (!view) return;
    const shown = aim?.placing && aim.hand === 'finger';
    under.current?.setAttribute('visibility', shown ? 'visible' : 'hidden');
    if (shown) moveTo(under.current, screenFromFrame(view, aim.point));
    moveTo(middle.current, middleOfScreen(view));
  });
  return (
    <g>
      <g ref={under} className="viewer-mark" data-selected visibility="hidden">
        <CrossLines />
      </g>
      <g ref={middle} className="viewer-mark viewer-middle" data-selected>
        <CrossLines />
      </g>
    </g>
  );
}

function CrossLines() {
  return (
    <>
      <path className="viewer-rim" d={SELECTED_CROSS} />
      <path className="viewer-edge" d={SELECTED_CROSS} />
      <path className="viewer-line" d={SELECTED_CROSS} />
    </>
  );
}

function moveTo(group: SVGGElement | null, at: { readonly xCss: number; readonly yCss: number }): void {
  group?.setAttribute('transform', `translate(${at.xCss} ${at.yCss})`);
}
