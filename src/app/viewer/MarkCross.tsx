import { useRef } from 'react';
import { markLabel } from '../words/viewer.ts';
import { useEachFrame } from './use-each-frame.ts';
import { screenFromFrame } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';
import type { ViewerStore } from './viewer-store.ts';

export const SELECTED_CROSS = 'M-16 0H-4.5M4.5 0H16M0-16V-4.5M0 4.5V16';
const CROSS = 'M-11 0H-4M4 0H11M0-11V-4M0 4V11';
const MINOR_CROSS = 'M-7 0H-3M3 0H7M0-7V-3M0 3V7';
/** Set by an assist: turned by an eighth, so that it is told from a hand's mark without colour. */
const SELECTED_TURNED_CROSS = 'M-11.3-11.3-3.2-3.2M3.2 3.2 11.3 11.3M-11.3 11.3-3.2 3.2M3.2-3.2 11.3-11.3';
/** The printed target has two dozen: small, so that they leave the picture to be seen. */
const MINOR_TURNED_CROSS = 'M-4-4-1.5-1.5M1.5 1.5 4 4M-4 4-1.5 1.5M1.5-1.5 4-4';
const TURNED_CROSS = 'M-8.5-8.5-2.8-2.8M2.8 2.8 8.5 8.5M-8.5 8.5-2.8 2.8M2.8-2.8 8.5-8.5';

export function MarkCross(props: {
  readonly store: ViewerStore;
  readonly mark: ViewerMark;
  readonly pictureLabel: string;
  readonly isTabStop: boolean;
  readonly onFocus: (mark: ViewerMark) => void;
}) {
  const { store, mark, pictureLabel, isTabStop, onFocus } = props;
  const group = useRef<SVGGElement>(null);
  useEachFrame(store, ({ view }) => {
    if (!view) return;
    const { xCss, yCss } = screenFromFrame(view, mark);
    group.current?.setAttribute('transform', `translate(${xCss} ${yCss})`);
  });

  const cross = crossOf(mark);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button element cannot be drawn inside an SVG.
    <g
      ref={group}
      role="button"
      tabIndex={isTabStop ? 0 : -1}
      className="viewer-mark"
      data-mark-id={mark.id}
      data-selected={mark.selected || undefined}
      aria-label={markLabel(mark, pictureLabel)}
      aria-pressed={mark.selected}
      onFocus={() => onFocus(mark)}
    >
      <circle className="viewer-hit" r="22" />
      {mark.doubtful && (
        <>
          <circle className="viewer-doubt-edge" r="20" />
          <circle className="viewer-doubt" r="20" />
        </>
      )}
      {cross === null ? null : (
        <>
          <path className="viewer-rim" d={cross} />
          <path className="viewer-edge" d={cross} />
          <path className="viewer-line" d={cross} />
        </>
      )}
      <path className="viewer-focus" d="M-26-26H26V26H-26Z" />
    </g>
  );
}

/** Null: the line shows where it is. */
export function crossOf(mark: ViewerMark): string | null {
  if (mark.line && !mark.selected) return null;
  if (mark.automatic && mark.selected) return SELECTED_TURNED_CROSS;
  if (mark.automatic) return mark.minor ? MINOR_TURNED_CROSS : TURNED_CROSS;
  if (mark.selected) return SELECTED_CROSS;
  return mark.minor ? MINOR_CROSS : CROSS;
}
