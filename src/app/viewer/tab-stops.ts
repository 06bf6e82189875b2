/** Which marks the Tab key stops at: each by itself, but of many alike one, from which the page keys go to the others. */
import type { ViewerMark } from './viewer-mark.ts';

type Told = Pick<ViewerMark, 'id' | 'selected' | 'minor' | 'line'>;

const groupOf = ({ id, minor, line }: Told): string => line ?? (minor ? 'minor' : id);

/** Of a group the one that is selected, else its first. */
export function tabStops(marks: readonly Told[]): ReadonlySet<string> {
  const stops = new Map<string, string>();
  for (const mark of marks) if (mark.selected || !stops.has(groupOf(mark))) stops.set(groupOf(mark), mark.id);
  return new Set(stops.values());
}

/** The next of its group, or the one before; null at the end. */
export function besideInGroup(marks: readonly Told[], mark: Told, by: 1 | -1): string | null {
  const group = marks.filter((each) => groupOf(each) === groupOf(mark));
  return group[group.findIndex(({ id }) => id === mark.id) + by]?.id ?? null;
}
