import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { Measurement } from '../../measurement/measurement.ts';
import type { ViewerMark } from '../viewer/viewer-mark.ts';
import { markName } from '../words/marks.ts';

export function viewerMarks(
  view: View,
  selectedMarkId: string | null,
  measured: Measurement | null,
  unit: LengthUnit,
): readonly ViewerMark[] {
  const doubtful = measured?.warnings.find(({ code }) => code === 'measurement/mark-doubtful');
  const doubtfulId = doubtful && 'markId' in doubtful ? doubtful.markId : null;
  return view.marks.map((mark) => ({
    id: mark.id,
    xPx: mark.xPx,
    yPx: mark.yPx,
    name: nameOf(mark, view.marks, unit),
    selected: mark.id === selectedMarkId,
    automatic: mark.placedBy !== 'hand',
    doubtful: mark.id === doubtfulId,
    minor: mark.kind === 'clamp-band' || mark.kind === 'rod-line',
  }));
}

/** A graduation by its reading; one of several of a kind by its number. */
export function nameOf(mark: Mark, marks: readonly Mark[], unit: LengthUnit): string {
  if (mark.kind === 'tape-graduation') return formatLength(mark.readingMm, unit);
  const alike = marks.filter(({ kind }) => kind === mark.kind);
  return markName(mark.kind, alike.length > 1 ? alike.indexOf(mark) + 1 : null);
}
