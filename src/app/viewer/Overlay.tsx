import { useRef } from 'react';
import { VIEWER_WORDS } from '../words/viewer.ts';
import { AimCross } from './AimCross.tsx';
import { CropFrame } from './CropFrame.tsx';
import { FoundLine } from './FoundLine.tsx';
import { LINE_SORTS } from './found-line.ts';
import { MarkCross } from './MarkCross.tsx';
import { MarkNames } from './MarkNames.tsx';
import { OfferedCross } from './OfferedCross.tsx';
import { OfferedEdge } from './OfferedEdge.tsx';
import { OfferedRing } from './OfferedRing.tsx';
import type { OfferedMark } from './offered-mark.ts';
import { StrokeDimension } from './StrokeDimension.tsx';
import { type StrokeOnScreen, strokeOnScreen } from './stroke-on-screen.ts';
import { tabStops } from './tab-stops.ts';
import { textWidthCss } from './text-width.ts';
import type { View } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import type { FrameViewerProps } from './viewer-props.ts';
import type { ViewerStore } from './viewer-store.ts';

const UNMARKED = { selected: false, automatic: false, doubtful: false, minor: false } as const;

/** What is drawn over the picture, in screen pixels, so that it keeps its size at every zoom. */
export function Overlay(props: {
  readonly store: ViewerStore;
  readonly viewer: FrameViewerProps;
  readonly onFocus: (mark: ViewerMark) => void;
}) {
  const { store, viewer, onFocus } = props;
  const { marks, drawing, dimensionText, cropMode, placing } = viewer;
  const value = useRef<SVGTextElement>(null);
  if (cropMode)
    return (
      <svg className="viewer-overlay" aria-hidden="true">
        <CropFrame store={store} rect={cropMode.rect} />
      </svg>
    );

  const stroke = (view: View): StrokeOnScreen | null =>
    drawing && value.current && strokeOnScreen(view, drawing, textWidthCss(value.current), marks);
  const stops = tabStops(marks);
  return (
    <>
      <svg className="viewer-overlay" aria-hidden="true">
        {drawing && dimensionText !== null && (
          <StrokeDimension store={store} stroke={stroke} text={dimensionText} textRef={value} />
        )}
        {LINE_SORTS.map((sort) => (
          <FoundLine key={sort} store={store} marks={viewer.offered ?? []} sort={sort} offered />
        ))}
        {viewer.offered
          ?.filter(({ line }) => line === null)
          .map((mark) => (
            <Offered key={mark.id} store={store} mark={mark} />
          ))}
        {LINE_SORTS.map((sort) => (
          <FoundLine key={sort} store={store} marks={marks} sort={sort} />
        ))}
        <MarkNames
          store={store}
          marks={[...marks, ...(viewer.offered ?? []).flatMap(named)]}
          stroke={stroke}
        />
        {placing !== null && <AimCross store={store} />}
      </svg>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be an SVG. */}
      <svg className="viewer-overlay" role="group" aria-label={VIEWER_WORDS.marks}>
        {marks.map((mark) => (
          <MarkCross
            key={mark.id}
            store={store}
            mark={mark}
            pictureLabel={viewer.pictureLabel}
            isTabStop={stops.has(mark.id)}
            onFocus={onFocus}
          />
        ))}
      </svg>
    </>
  );
}

function Offered({ store, mark }: { readonly store: ViewerStore; readonly mark: OfferedMark }) {
  if (mark.edge) return <OfferedEdge store={store} edge={mark.edge} />;
  if (mark.ringPx === undefined) return <OfferedCross store={store} mark={mark} />;
  return <OfferedRing store={store} mark={mark} radiusPx={mark.ringPx} />;
}

/** What was found gives way to the marks' names: it is said beside the picture too. */
function named({ name, ...at }: OfferedMark): readonly ViewerMark[] {
  return name === null ? [] : [{ ...at, ...UNMARKED, name }];
}
