import { useMemo, useRef } from 'react';
import type { LengthUnit } from '../../basics/length-text.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import { useWide } from '../parts/use-wide.ts';
import { CURVE } from '../words/curve.ts';
import { CurveCursor } from './CurveCursor.tsx';
import { CurveDrawing } from './CurveDrawing.tsx';
import { CurveReadout } from './CurveReadout.tsx';
import { curveScale } from './curve-scale.ts';
import { frameByKey, nearestFrame } from './frame-choice.ts';
import { frameText } from './frame-text.ts';
import { useWidth } from './use-width.ts';

type Props = {
  readonly measurement: ClipMeasurement;
  readonly limitMm: number | null;
  readonly unit: LengthUnit;
  /** The frame at hand, counted from the track's first. */
  readonly frame: number;
  readonly onFrame: (frame: number) => void;
};

/** The stroke over time: one slider as large as the chart. Drawn as SVG, so that its text is text and its lines stay sharp. */
export function StrokeCurve({ measurement, limitMm, unit, frame, onFrame }: Props) {
  const chart = useRef<HTMLDivElement>(null);
  const widthCss = useWidth(chart);
  const low = useWide();
  const { curve } = measurement;
  const last = curve.length - 1;
  const at = Math.min(last, Math.max(0, frame));
  const scale = useMemo(
    () => (widthCss > 0 ? curveScale(measurement, { widthCss, limitMm, unit, low }) : null),
    [measurement, widthCss, limitMm, unit, low],
  );

  const go = (next: number) => {
    if (next !== at) onFrame(next);
  };
  const goTo = ({ clientX }: { readonly clientX: number }) => {
    if (!chart.current || !scale) return;
    const xCss = clientX - chart.current.getBoundingClientRect().left;
    go(nearestFrame(curve, scale.timeAt(xCss)));
  };

  return (
    <figure className="curve">
      <CurveReadout measurement={measurement} unit={unit} frame={at} />
      <div
        ref={chart}
        className="curve-chart"
        role="slider"
        tabIndex={0}
        aria-label={CURVE.name}
        aria-valuemin={1}
        aria-valuemax={last + 1}
        aria-valuenow={at + 1}
        aria-valuetext={frameText(measurement, at, unit)}
        onKeyDown={(event) => {
          if (event.altKey || event.ctrlKey || event.metaKey) return;
          const next = frameByKey(event, at, curve.length);
          if (next === null) return;
          event.preventDefault();
          go(next);
        }}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          goTo(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) goTo(event);
        }}
      >
        {scale ? (
          <>
            <CurveDrawing measurement={measurement} scale={scale} limitMm={limitMm} unit={unit} />
            <CurveCursor measurement={measurement} scale={scale} frame={at} />
          </>
        ) : null}
      </div>
      <figcaption className="quiet">{CURVE.key}</figcaption>
    </figure>
  );
}
