import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { Mark } from '../../marks/mark.ts';
import type { PlacedPoint } from '../../marks/placement.ts';
import { MOST_CORRECTIONS } from '../../marks/track.ts';
import { type Following, followings } from '../following/followings-store.ts';
import { marksInFrame } from '../following/places-in-frame.ts';
import { type Correctable, correctionKey, goOnPuttingRight, putRight } from '../following/run-correction.ts';
import { media } from '../stores.ts';
import type { FrameViewerProps } from '../viewer/viewer-props.ts';
import { markName } from '../words/marks.ts';
import { type Current, viewOf } from '../work/current.ts';

export type PutRight = {
  readonly following: Following | null;
  /** Shows the marks of this frame to be dragged; null where that cannot be. */
  readonly begin: (() => void) | null;
  /** While they are shown. */
  readonly draft: {
    readonly viewer: Pick<FrameViewerProps, 'marks' | 'onMoveBegin' | 'onMove' | 'onMoveCancel' | 'onSelect'>;
    /** Null until something was dragged. */
    readonly follow: (() => void) | null;
    readonly leave: () => void;
  } | null;
};

const KINDS: readonly Mark['kind'][] = ['clevis-pin', 'chamber-face', 'camshaft-end'];

type Draft = {
  readonly index: number;
  readonly marks: readonly Mark[];
  readonly selectedId: string | null;
  /** As the mark was before the drag that is under way. */
  readonly held: Mark | null;
};

/** Of a followed clip, any frame but the marked one can be put right. */
export function usePutRight(
  { measurement }: Current,
  capture: Capture,
  frame: Frame | null,
  followed: { readonly at: number } | null,
): PutRight | null {
  const file = useStore(media, ({ files }) => files[capture.sha256] ?? null);
  const track = measurement.followed?.track ?? null;
  const seed = track && viewOf(measurement, track.state);
  const one = track?.captureId === capture.id && seed && file ? { track, seed, capture, file } : null;
  const key = one && correctionKey(one.track);
  const following = useStore(followings, (store) => (key === null ? null : (store.followings[key] ?? null)));
  const [draft, setDraft] = useState<Draft | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each track, which the key names.
  useEffect(() => {
    if (one) void goOnPuttingRight(one);
  }, [key]);

  if (!one || !frame || !followed) return null;
  const isFull = one.track.corrections.length >= MOST_CORRECTIONS;
  const busy = following?.is === 'under-way' || following?.is === 'measuring';
  const begin = () => {
    // On a phone the picture is a screen further up.
    scrollTo({ top: 0 });
    setDraft({
      index: frame.index,
      marks: marksInFrame(one.track, one.seed, followed.at)
        .filter(({ kind }) => KINDS.includes(kind))
        .map((mark) => ({ ...mark, id: crypto.randomUUID() })),
      selectedId: null,
      held: null,
    });
  };
  return {
    following,
    begin: busy || frame.index === one.track.seed.index || isFull ? null : begin,
    draft: draft?.index === frame.index && !busy ? shownDraft(draft, setDraft, one, frame) : null,
  };
}

function shownDraft(
  draft: Draft,
  setDraft: (draft: Draft | null) => void,
  one: Correctable,
  frame: Frame,
): PutRight['draft'] {
  const withMark = (id: string, change: (mark: Mark) => Mark): readonly Mark[] =>
    draft.marks.map((mark) => (mark.id === id ? change(mark) : mark));
  const byHand = draft.marks.filter(({ placedBy }) => placedBy === 'hand');
  return {
    viewer: {
      marks: draft.marks.map((mark) => ({
        id: mark.id,
        xPx: mark.xPx,
        yPx: mark.yPx,
        name: markName(mark.kind, null),
        selected: mark.id === draft.selectedId,
        automatic: mark.placedBy !== 'hand',
        doubtful: false,
        minor: false,
      })),
      onMoveBegin: (id) =>
        setDraft({ ...draft, selectedId: id, held: draft.marks.find((mark) => mark.id === id) ?? null }),
      onMove: (id, point: PlacedPoint) =>
        setDraft({ ...draft, marks: withMark(id, (mark) => ({ ...mark, ...point, placedBy: 'hand' })) }),
      onMoveCancel: (id) => setDraft({ ...draft, marks: withMark(id, (mark) => draft.held ?? mark) }),
      onSelect: (selectedId) => setDraft({ ...draft, selectedId }),
    },
    follow:
      byHand.length === 0
        ? null
        : () => {
            setDraft(null);
            void putRight(one, { frame, marks: byHand });
          },
    leave: () => setDraft(null),
  };
}
