import { type RefObject, useRef } from 'react';
import type { StrokeOnScreen } from './stroke-on-screen.ts';
import { useEachFrame } from './use-each-frame.ts';
import type { ScreenPoint, View } from './view-transform.ts';
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
      axis: stroke.axis.map(polyline).join(''),
      thin: stroke.thin.map(polyline).join(''),
      arrows: stroke.arrows.map((arrow) => `${polyline(arrow)}Z`).join(''),
    };
    for (const path of group.current.querySelectorAll('path'))
      path.setAttribute('d', paths[path.dataset.of as keyof typeof paths]);
    const { leftCss, topCss } = stroke.value;
    textRef.current.setAttribute('transform', `translate(${leftCss} ${topCss + BASELINE_CSS})`);
  });

  return (
    <g ref={group} className="viewer-dimension">
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

function polyline(points: readonly ScreenPoint[]): string {
  return `M${points.map(({ xCss, yCss }) => `${xCss.toFixed(2)} ${yCss.toFixed(2)}`).join('L')}`;
}
