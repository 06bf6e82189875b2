import { memo, useEffect, useRef } from 'react';
import { paintPicture } from './paint-picture.ts';
import { useEachFrame } from './use-each-frame.ts';
import type { ViewerStore } from './viewer-store.ts';

/** After the last motion, before the picture is drawn once more at its best. */
const REST_MS = 140;

export const PictureCanvas = memo(function PictureCanvas(props: {
  readonly store: ViewerStore;
  readonly picture: ImageBitmap;
}) {
  const { store, picture } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const rest = useRef(0);
  const painted = useRef<{ view: unknown; picture: unknown }>({ view: null, picture: null });

  useEachFrame(store, ({ view }) => {
    const element = canvas.current;
    if (!element || !view) return;
    if (painted.current.view === view && painted.current.picture === picture) return;
    painted.current = { view, picture };
    paintPicture(element, picture, view, 'low');
    clearTimeout(rest.current);
    rest.current = window.setTimeout(() => paintPicture(element, picture, view, 'high'), REST_MS);
  });
  useEffect(() => () => clearTimeout(rest.current), []);

  return <canvas ref={canvas} className="viewer-picture" />;
});
