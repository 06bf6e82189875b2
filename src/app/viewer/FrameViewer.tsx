import { useEffect, useRef, useState } from 'react';
import { Loupe } from './Loupe.tsx';
import { Overlay } from './Overlay.tsx';
import { PictureCanvas } from './PictureCanvas.tsx';
import { useGestures } from './use-gestures.ts';
import { useKeys } from './use-keys.ts';
import { useLatest } from './use-latest.ts';
import { useView } from './use-view.ts';
import { ViewControls } from './ViewControls.tsx';
import { revealed } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import type { FrameViewerProps } from './viewer-props.ts';
import { changeView, createViewerStore } from './viewer-store.ts';
import './viewer.css';

export function FrameViewer(props: FrameViewerProps) {
  const { picture, pictureLabel, marks, placing, cropMode } = props;
  const [store] = useState(createViewerStore);
  const stage = useRef<HTMLDivElement>(null);
  const latest = useLatest(props);
  useView(store, stage, props);
  useGestures(store, stage, latest);
  const keys = useKeys(store, latest);

  useEffect(() => {
    if (placing === null || picture === null) store.setState({ aim: null });
  }, [store, placing, picture]);

  const selected = marks.find((mark) => mark.selected) ?? null;
  const selectedId = selected?.id ?? null;
  useEffect(() => {
    const mark = latest.current.marks.find(({ id }) => id === selectedId);
    if (mark) changeView(store, (view) => revealed(view, mark, 0));
  }, [store, latest, selectedId]);

  const onMarkFocus = (mark: ViewerMark) => {
    if (!mark.selected) latest.current.onSelect(mark.id);
  };

  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys pan the picture and + - 0 zoom it.
    <section className="viewer" aria-label={pictureLabel} tabIndex={0} {...keys}>
      <div
        ref={stage}
        className="viewer-stage"
        data-mode={cropMode ? 'crop' : placing === null ? 'look' : 'place'}
      >
        {picture && (
          <>
            <PictureCanvas store={store} picture={picture} />
            {props.over?.(store)}
            <Overlay store={store} viewer={props} onFocus={onMarkFocus} />
          </>
        )}
      </div>
      {picture ? (
        <>
          <Loupe store={store} picture={picture} />
          <ViewControls store={store} selected={selected} />
        </>
      ) : (
        <p className="viewer-empty">{props.whyNone ?? pictureLabel}</p>
      )}
    </section>
  );
}
