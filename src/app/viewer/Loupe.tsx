import { memo, useRef } from 'react';
import { LOUPE_CSS, type LoupeSide, loupePlace, loupeScale } from './loupe-place.ts';
import { paintPicture } from './paint-picture.ts';
import { useEachFrame } from './use-each-frame.ts';
import { screenFromFrame } from './view-transform.ts';
import type { ViewerStore } from './viewer-store.ts';

const HALF = LOUPE_CSS / 2;

/** A detail of the drawing: what lies under the point, enlarged, in a square beside the finger. */
export const Loupe = memo(function Loupe(props: {
  readonly store: ViewerStore;
  readonly picture: ImageBitmap;
}) {
  const { store, picture } = props;
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const side = useRef<LoupeSide | null>(null);

  useEachFrame(store, ({ view, aim }) => {
    if (!frame.current || !canvas.current) return;
    const scale = view && aim ? loupeScale(aim.hand, view.scale) : null;
    frame.current.hidden = scale === null;
    if (!view || !aim || scale === null) {
      side.current = null;
      return;
    }
    const mark = screenFromFrame(view, aim.point);
    const place = loupePlace(aim.hand, { finger: aim.finger, mark }, view.screen, side.current);
    side.current = place.side;
    frame.current.style.transform = `translate(${place.leftCss}px, ${place.topCss}px)`;
    const inside = {
      screen: { widthCss: LOUPE_CSS, heightCss: LOUPE_CSS },
      scale,
      origin: { xCss: HALF - scale * aim.point.xPx, yCss: HALF - scale * aim.point.yPx },
    };
    paintPicture(canvas.current, picture, inside, 'medium');
  });

  return (
    <div ref={frame} className="viewer-loupe" aria-hidden="true" hidden>
      <canvas ref={canvas} />
      <svg viewBox={`${-HALF} ${-HALF} ${LOUPE_CSS} ${LOUPE_CSS}`} aria-hidden="true">
        <path className="viewer-loupe-edge" d={LOUPE_CROSS} />
        <path className="viewer-loupe-line" d={LOUPE_CROSS} />
      </svg>
    </div>
  );
});

const LOUPE_CROSS = `M${-HALF} 0H-7M7 0H${HALF}M0 ${-HALF}V-7M0 7V${HALF}`;
