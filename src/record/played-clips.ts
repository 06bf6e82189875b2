/**
 * Clips of which the browser's player gave frames: it shows a frame and says which it is, where a decoder gives that frame.
 * Where nothing moves, the frame beside shows the same.
 */
import type { Capture } from '../captures/capture.ts';
import type { MeasurementInput } from './measurement-input.ts';
import type { InspectionRecord } from './record.ts';

/** Their file names. */
export function playedClips(captures: readonly Capture[]): readonly string[] {
  return captures.filter(({ clip }) => clip?.framesBy === 'player').map(({ fileName }) => fileName);
}

/** Of those, the ones that a measurement rests on. */
export function playedClipsOf(
  { captures }: InspectionRecord,
  { views }: MeasurementInput,
): readonly string[] {
  return playedClips(captures.filter(({ id }) => views.some(({ captureId }) => captureId === id)));
}

/** The record itself where it says so already. */
export function withPlayedClip(record: InspectionRecord, captureId: string): InspectionRecord {
  const capture = record.captures.find(({ id }) => id === captureId);
  if (!capture?.clip || capture.clip.framesBy === 'player') return record;
  const played: Capture = { ...capture, clip: { ...capture.clip, framesBy: 'player' } };
  return { ...record, captures: record.captures.map((each) => (each === capture ? played : each)) };
}
