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
import type { ClipMeasurement } from '../../../src/measurement/clip-measurement.ts';
import { SIMULATED } from './simulated-clip.ts';

type Shown = {
  readonly measurement: ClipMeasurement;
  readonly limitMm: number | null;
  readonly unit: LengthUnit;
  readonly frame: number;
};

export type Harness = {
  readonly frames: number[];
  readonly show: (clip: keyof typeof SIMULATED, change?: Partial<Shown>) => void;
};

declare global {
  interface Window {
    curveHarness: Harness;
  }
}

const frames: number[] = [];

function Page() {
  const [shown, setShown] = useState<Shown>({
    measurement: SIMULATED.one(),
    limitMm: 50.8,
    unit: 'fraction',
    frame: 35,
  });
  window.curveHarness = {
    frames,
    show: (clip, change) =>
      flushSync(() => setShown((now) => ({ ...now, measurement: SIMULATED[clip](), ...change }))),
  };
  return (
    <main>
      <StrokeCurve
        {...shown}
        onFrame={(frame) => {
          frames.push(frame);
          setShown((now) => ({ ...now, frame }));
        }}
      />
      <ApplicationTable measurement={shown.measurement} unit={shown.unit} />
      <SaveTable table={() => 'time_s,stroke_mm\r\n0,0\r\n'} fileName="curve.csv" />
    </main>
  );
}

const root = document.getElementById('root');
if (root) createRoot(root).render(<Page />);
