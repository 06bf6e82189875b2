import { useRef } from 'react';
import { nameOnPicture } from '../words/viewer.ts';
import { namePlaces } from './name-places.ts';
import type { StrokeOnScreen } from './stroke-on-screen.ts';
import { textWidthCss } from './text-width.ts';
import { useEachFrame } from './use-each-frame.ts';
import { screenFromFrame, type View } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import type { ViewerStore } from './viewer-store.ts';

const HEIGHT_CSS = 21;
const BASELINE_CSS = 16;
const REACH_CSS = 11;
const MINOR_REACH_CSS = 7;
const SELECTED_REACH_CSS = 16;
const DOUBTFUL_REACH_CSS = 21;

export function MarkNames(props: {
  readonly store: ViewerStore;
  readonly marks: readonly ViewerMark[];
  readonly stroke: (view: View) => StrokeOnScreen | null;
}) {
  const { store, marks } = props;
  const texts = useRef(new Map<string, SVGTextElement>());

  useEachFrame(store, ({ view }) => {
    if (!view) return;
    const names = marks.flatMap((mark) => {
      const text = texts.current.get(mark.id);
      if (!text) return [];
      const needed = mark.selected || mark.doubtful;
      const name = {
        id: mark.id,
        at: screenFromFrame(view, mark),
        widthCss: textWidthCss(text),
        heightCss: HEIGHT_CSS,
        reachCss: Math.max(reachCss(mark), view.scale * (mark.ringPx ?? 0)),
        needed,
        silent: mark.minor && !needed,
      };
      return [name];
    });
    const stroke = props.stroke(view);
    const boxes = stroke ? [stroke.value] : [];
    const lines = stroke ? [...stroke.axis, ...stroke.thin] : [];
    for (const [id, box] of namePlaces(names, { boxes, lines }, view.screen)) {
      const text = texts.current.get(id);
      text?.setAttribute('visibility', box ? 'visible' : 'hidden');
      if (box) text?.setAttribute('transform', `translate(${box.leftCss} ${box.topCss + BASELINE_CSS})`);
    }
  });

  return (
    <g>
      {marks.map((mark) => (
        <text
          key={mark.id}
          ref={(element) => {
            if (element) texts.current.set(mark.id, element);
            return () => {
              texts.current.delete(mark.id);
            };
          }}
          className="viewer-name"
          data-selected={mark.selected || undefined}
          data-doubtful={mark.doubtful || undefined}
        >
          {nameOnPicture(mark)}
        </text>
      ))}
    </g>
  );
}

function reachCss(mark: ViewerMark): number {
  if (mark.doubtful) return DOUBTFUL_REACH_CSS;
  if (mark.selected) return SELECTED_REACH_CSS;
  return mark.minor ? MINOR_REACH_CSS : REACH_CSS;
}
