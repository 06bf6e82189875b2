/**
 * The curve as text for a spreadsheet.
 *
 * Source   RFC 4180: lines ended by CR LF, the first one names the columns, no field here needs quotes
 */
import { degFromRad, inchesFromMm } from '../basics/units.ts';
import type { ClipMeasurement, PhaseKind, Uncertain } from './clip-measurement.ts';

const COLUMNS = [
  'frame',
  'time_s',
  'phase',
  'stroke_mm',
  'u_stroke_mm',
  'stroke_in',
  'u_stroke_in',
  'arm_angle_deg',
  'u_arm_angle_deg',
  'marked_by_hand',
];

/** firstIndex: of the track's first frame in its clip. Fields in a gap are empty. */
export function strokeTable({ curve, applications, marked }: ClipMeasurement, firstIndex: number): string {
  const phaseAt = (frame: number): PhaseKind | '' =>
    applications.flatMap(({ phases }) => phases).find(({ from, to }) => from <= frame && frame <= to)?.kind ??
    '';
  const lines = curve.map(({ timeS, stroke, armAngleRad }, frame) =>
    [
      String(firstIndex + frame),
      timeS.toFixed(6),
      phaseAt(frame),
      ...pair(stroke, (mm) => mm, 3),
      ...pair(stroke, inchesFromMm, 4),
      ...pair(armAngleRad, degFromRad, 3),
      marked.includes(frame) ? 'yes' : '',
    ].join(','),
  );
  return [COLUMNS.join(','), ...lines, ''].join('\r\n');
}

function pair(
  measured: Uncertain | null,
  inUnit: (value: number) => number,
  digits: number,
): readonly string[] {
  if (!measured) return ['', ''];
  return [inUnit(measured.value).toFixed(digits), inUnit(measured.u).toFixed(digits)];
}
