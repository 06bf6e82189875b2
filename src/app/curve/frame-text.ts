/** One frame in words: for who hears the chart. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { ClipMeasurement, Phase } from '../../measurement/clip-measurement.ts';
import { angleText, CURVE, openText, phaseText, secondsText, strokeAndUText } from '../words/curve.ts';
import { gapsIn } from './gap-notes.ts';

export function frameText(measurement: ClipMeasurement, frame: number, unit: LengthUnit): string {
  const { curve } = measurement;
  const point = curve[frame];
  if (!point) return '';
  const phase = phaseAt(measurement, frame);
  const angle = point.armAngleRad ? [`${CURVE.angle} ${angleText(point.armAngleRad.value)}`] : [];
  return [
    CURVE.frame(frame, curve.length),
    secondsText(point.timeS),
    point.stroke
      ? `${CURVE.stroke} ${strokeAndUText(point.stroke, unit)}`
      : openAt(measurement, frame, 'stroke'),
    ...angle,
    ...(phase ? [phaseText(phase)] : []),
  ].join(', ');
}

export function openAt(measurement: ClipMeasurement, frame: number, of: 'stroke' | 'angle'): string {
  const gap = gapsIn(measurement, of).find(({ from, to }) => from <= frame && frame <= to);
  return openText(gap?.unseen ?? null);
}

export function phaseAt({ applications }: ClipMeasurement, frame: number): Phase['kind'] | null {
  const phases = applications.flatMap(({ phases }) => phases);
  return phases.find(({ from, to }) => from <= frame && frame <= to)?.kind ?? null;
}
