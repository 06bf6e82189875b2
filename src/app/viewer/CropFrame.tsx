import { useRef } from 'react';
import type { CropRect } from './crop-rect.ts';
import { useEachFrame } from './use-each-frame.ts';
import { screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

/** The rectangle that is cut out, with the rest of the picture dimmed. */
export function CropFrame(props: { readonly store: ViewerStore; readonly rect: CropRect | null }) {
  const { store, rect } = props;
  const group = useRef<SVGGElement>(null);
  useEachFrame(store, ({ view, draftCrop }) => {
    const shown = draftCrop ?? rect;
    group.current?.setAttribute('visibility', view && shown ? 'visible' : 'hidden');
    if (!view || !shown || !group.current) return;
    const { xCss, yCss } = screenFromFrame(view, shown);
    const frame = `M${xCss} ${yCss}h${shown.widthPx * view.scale}v${shown.heightPx * view.scale}h${-shown.widthPx * view.scale}Z`;
    const { widthCss, heightCss } = view.screen;
    for (const path of group.current.querySelectorAll('path'))
      path.setAttribute('d', path.dataset.of === 'rest' ? `M0 0H${widthCss}V${heightCss}H0Z${frame}` : frame);
  });
  return (
    <g ref={group} visibility="hidden">
      <path className="viewer-crop-rest" data-of="rest" fillRule="evenodd" />
      <path className="viewer-edge" data-of="frame" />
      <path className="viewer-line" data-of="frame" />
    </g>
  );
}
