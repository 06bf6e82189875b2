/** The curve and its applications alone on a page, with a plain holder of the frame in place of the app. */
import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import { useState } from 'react';
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import '../../../src/app/styles/tokens.css';
import '../../../src/app/styles/base.css';
import '../../../src/app/styles/controls.css';
import '../../../src/app/styles/sheet.css';
import '../../../src/app/styles/curve.css';
import { ApplicationTable } from '../../../src/app/curve/ApplicationTable.tsx';
import { SaveTable } from '../../../src/app/curve/SaveTable.tsx';
import { StrokeCurve } from '../../../src/app/curve/StrokeCurve.tsx';
import type { LengthUnit } from '../../../src/basics/length-text.ts';
import { openCapture } from '../../../src/captures/open-capture.browser.ts';
import { openFrames } from '../../../src/frames/open-frames.browser.ts';
import type { ClipMeasurement } from '../../../src/measurement/clip-measurement.ts';
import { strokeTable } from '../../../src/measurement/stroke-table.ts';
import { type Annotated, annotate } from './annotate.ts';
import { type Followed, FollowedPage } from './followed-page.tsx';
import { SIMULATED } from './simulated-clip.ts';
import { type Truth, truthClip } from './truth-clip.ts';

type Shown = {
  readonly measurement: ClipMeasurement;
  readonly limitMm: number | null;
  readonly unit: LengthUnit;
  readonly frame: number;
};

export type Harness = {
  readonly frames: number[];
  /** The chosen file with its truth, at a frame. */
  readonly follow: (truth: Truth, frame: number) => Promise<void>;
  readonly annotate: (
    points: readonly (readonly [number, number])[],
    abortAfter: number | null,
  ) => Promise<Annotated>;
  readonly show: (clip: keyof typeof SIMULATED, change?: Partial<Shown>) => void;
};

declare global {
  interface Window {
    curveHarness: Harness;
  }
}

const frames: number[] = [];

function chosenFile(): File {
  const file = document.querySelector('input')?.files?.[0];
  if (!file) throw new Error('No file');
  return file;
}

async function opened(truth: Truth): Promise<Followed> {
  const blob = chosenFile();
  const capture = await openCapture(blob, { id: 'c1', signal: new AbortController().signal });
  if (!capture.ok) throw new Error(capture.failure.code);
  const source = await openFrames(capture.value.capture, blob);
  if (!source.ok) throw new Error(source.failure.code);
  const ticks = capture.value.capture.clip?.ticksPerSecond ?? 1;
  return { ...truthClip(truth, ticks), capture: capture.value.capture, blob, source: source.value };
}

function Page() {
  const [shown, setShown] = useState<Shown>({
    measurement: SIMULATED.one(),
    limitMm: 50.8,
    unit: 'fraction',
    frame: 35,
  });
  const [followed, setFollowed] = useState<{ readonly clip: Followed; readonly frame: number } | null>(null);
  window.curveHarness = {
    frames,
    annotate: (points, abortAfter) => annotate(chosenFile(), points, abortAfter),
    follow: async (truth, frame) => {
      const clip = await opened(truth);
      flushSync(() => setFollowed({ clip, frame }));
    },
    show: (clip, change) =>
      flushSync(() => setShown((now) => ({ ...now, measurement: SIMULATED[clip](), ...change }))),
  };
  if (followed) return <FollowedPage followed={followed.clip} frame={followed.frame} />;
  return (
    <main>
      <input type="file" hidden aria-label="Clip" />
      <StrokeCurve
        {...shown}
        onFrame={(frame) => {
          frames.push(frame);
          setShown((now) => ({ ...now, frame }));
        }}
      />
      <ApplicationTable measurement={shown.measurement} unit={shown.unit} />
      <SaveTable table={() => strokeTable(shown.measurement, 0)} fileName="curve.csv" />
    </main>
  );
}

const root = document.getElementById('root');
if (root) createRoot(root).render(<Page />);
