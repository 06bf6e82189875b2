import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { Mark, MarkKind } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { Measurement } from '../../measurement/measurement.ts';
import { LINES, type LineSort } from '../viewer/found-line.ts';
import type { ViewerMark } from '../viewer/viewer-mark.ts';
import { markName } from '../words/marks.ts';

/** Drawn small and named only when selected: there are many of each. */
const MINOR: readonly MarkKind[] = ['clamp-band', 'rod-line', 'tape-edge', 'target-corner'];

export function viewerMarks(
  view: View,
  hand: { readonly selectedMarkId: string | null; readonly askedKind: MarkKind | null } | null,
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
    selected: mark.id === hand?.selectedMarkId,
    automatic: mark.placedBy !== 'hand',
    doubtful: mark.id === doubtfulId,
    asked: mark.kind === hand?.askedKind,
    minor: MINOR.includes(mark.kind) || isOneOfMany(mark, view.marks),
    line: lineOf(mark, view.marks),
  }));
}

/** A rim or an edge that was found keeps its line when a hand moves a point of it. */
function lineOf(mark: Mark, marks: readonly Mark[]): LineSort | null {
  const isFound =
    mark.kind === 'tape-graduation'
      ? isOneOfMany(mark, marks)
      : marks.some(({ kind, placedBy }) => kind === mark.kind && placedBy === 'assist');
  return (isFound && LINES[mark.kind]) || null;
}

/** Of graduations that were found, the first and the last say which they are. */
function isOneOfMany(mark: Mark, marks: readonly Mark[]): boolean {
  if (mark.placedBy === 'hand') return false;
  if (mark.kind !== 'tape-graduation') return mark.kind === 'tie-point';
  const readings = marks.flatMap((each) => (each.kind === 'tape-graduation' ? [each.readingMm] : []));
  return mark.readingMm !== Math.min(...readings) && mark.readingMm !== Math.max(...readings);
}

/** A graduation by its reading; one of several of a kind by its number. */
export function nameOf(mark: Mark, marks: readonly Mark[], unit: LengthUnit): string {
  if (mark.kind === 'tape-graduation') return formatLength(mark.readingMm, unit);
  if (mark.kind === 'tie-point') return `${markName(mark.kind, null)} ${mark.tie}`;
  const alike = marks.filter(({ kind }) => kind === mark.kind);
  return markName(mark.kind, alike.length > 1 ? alike.indexOf(mark) + 1 : null);
}
