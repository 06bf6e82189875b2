import { type RefObject, useRef } from 'react';
import { arrowsPath, linesPath } from './line-path.ts';
import type { StrokeOnScreen } from './stroke-on-screen.ts';
import { useEachFrame } from './use-each-frame.ts';
import type { View } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

const BASELINE_CSS = 19;

export function StrokeDimension(props: {
  readonly store: ViewerStore;
  readonly stroke: (view: View) => StrokeOnScreen | null;
  readonly text: string;
  readonly textRef: RefObject<SVGTextElement | null>;
}) {
  const { store, text, textRef } = props;
  const group = useRef<SVGGElement>(null);

  useEachFrame(store, ({ view }) => {
    const stroke = view && props.stroke(view);
    if (!stroke || !group.current || !textRef.current) return;
    const paths = {
      axis: linesPath(stroke.axis),
      thin: linesPath(stroke.thin),
      arrows: arrowsPath(stroke.arrows),
    };
    for (const path of group.current.querySelectorAll('path'))
      path.setAttribute('d', paths[path.dataset.of as keyof typeof paths]);
    const { leftCss, topCss } = stroke.value;
    textRef.current.setAttribute('transform', `translate(${leftCss} ${topCss + BASELINE_CSS})`);
  });

  return (
    <g ref={group}>
      <path className="viewer-halo" data-of="axis" />
      <path className="viewer-halo" data-of="thin" />
      <path className="viewer-halo" data-of="arrows" />
      <path className="viewer-axis" data-of="axis" />
      <path className="viewer-thin" data-of="thin" />
      <path className="viewer-arrow" data-of="arrows" />
      <text ref={textRef} className="viewer-value">
        {text}
      </text>
    </g>
  );
}
