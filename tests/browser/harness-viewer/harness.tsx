/** The viewer alone on a page, with a plain holder of marks in place of the shell. Tests drive it through `window.harness`. */
import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import { Profiler, useState } from 'react';
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import '../../../src/app/styles/tokens.css';
import '../../../src/app/styles/base.css';
import { FrameViewer } from '../../../src/app/viewer/FrameViewer.tsx';
import type { FrameViewerProps } from '../../../src/app/viewer/viewer-props.ts';
import './harness.css';
import { testPicture } from './test-picture.ts';

type Shown = Omit<
  FrameViewerProps,
  'onPlace' | 'onMoveBegin' | 'onMove' | 'onMoveEnd' | 'onMoveCancel' | 'onSelect' | 'onDelete' | 'cropMode'
> & { readonly cropping: boolean };

export type Harness = {
  readonly calls: { name: string; args: unknown[] }[];
  readonly renders: { count: number };
  readonly show: (change: Partial<Shown>) => void;
  readonly picture: (kind: 'numbered' | 'yard' | null) => Promise<void>;
  readonly marks: () => Shown['marks'];
};

declare global {
  interface Window {
    harness: Harness;
  }
}

const calls: Harness['calls'] = [];
const renders = { count: 0 };
const first: Shown = {
  picture: null,
  pictureLabel: 'Released picture',
  marks: [],
  firstShown: [],
  drawing: null,
  dimensionText: null,
  placing: null,
  cropping: false,
};

function Page() {
  const [shown, setShown] = useState(first);
  const [before, setBefore] = useState(shown.marks);
  const [rect, setRect] = useState<NonNullable<FrameViewerProps['cropMode']>['rect']>(null);
  const called = (name: string, ...args: unknown[]) => calls.push({ name, args });
  const change = (id: string, part: object) =>
    setShown((now) => ({
      ...now,
      marks: now.marks.map((mark) => (mark.id === id ? { ...mark, ...part } : mark)),
    }));

  window.harness = {
    calls,
    renders,
    show: (part) => flushSync(() => setShown((now) => ({ ...now, ...part }))),
    picture: async (kind) => {
      const picture = kind && (await testPicture(kind));
      flushSync(() => setShown((now) => ({ ...now, picture })));
    },
    marks: () => shown.marks,
  };

  const { cropping, ...viewer } = shown;
  return (
    <main>
      <Profiler
        id="viewer"
        onRender={() => {
          renders.count++;
        }}
      >
        <FrameViewer
          {...viewer}
          cropMode={
            cropping
              ? {
                  rect,
                  onCrop: (next) => {
                    called('crop', next);
                    setRect(next);
                  },
                }
              : null
          }
          onPlace={({ xPx, yPx, sigmaPx }) => {
            called('place', { xPx, yPx, sigmaPx });
            const id = `m${shown.marks.length + 1}`;
            const mark = {
              id,
              xPx,
              yPx,
              name: shown.placing ?? '',
              automatic: false,
              doubtful: false,
              minor: false,
            };
            setShown((now) => ({
              ...now,
              placing: null,
              marks: [
                ...now.marks.map((each) => ({ ...each, selected: false })),
                { ...mark, selected: true },
              ],
            }));
          }}
          onMoveBegin={(id) => {
            called('moveBegin', id);
            setBefore(shown.marks);
          }}
          onMove={(id, { xPx, yPx, sigmaPx }) => {
            called('move', id, { xPx, yPx, sigmaPx });
            change(id, { xPx, yPx });
          }}
          onMoveEnd={(id) => called('moveEnd', id)}
          onMoveCancel={(id) => {
            called('moveCancel', id);
            setShown((now) => ({ ...now, marks: before }));
          }}
          onSelect={(id) => {
            called('select', id);
            setShown((now) => ({
              ...now,
              marks: now.marks.map((mark) => ({ ...mark, selected: mark.id === id })),
            }));
          }}
          onDelete={(id) => {
            called('delete', id);
            setShown((now) => ({ ...now, marks: now.marks.filter((mark) => mark.id !== id) }));
          }}
        />
      </Profiler>
    </main>
  );
}

const root = document.getElementById('root');
if (root) createRoot(root).render(<Page />);
