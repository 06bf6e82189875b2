/** What was followed through a clip hangs on the marks it was followed from: when those change, it goes, or changes with them. */
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';

export function afterChange(before: MeasurementInput, after: MeasurementInput): MeasurementInput {
  if (before.views === after.views || !before.followed) return after;
  if (!after.followed || isStale(before, after)) return withoutFollowed(after);
  const seeds = new Map(after.views.flatMap(({ marks }) => marks.map((mark) => [mark.id, mark])));
  const asRead = (view: View): View => ({ ...view, marks: view.marks.map((mark) => readAs(mark, seeds)) });
  return {
    ...after,
    views: after.views.map(asRead),
    followed: { ...after.followed, sideViews: after.followed.sideViews.map(asRead) },
  };
}

/** Marks, tie points and further frames that came of following. */
function withoutFollowed(measurement: MeasurementInput): MeasurementInput {
  return {
    ...measurement,
    views: measurement.views.map((view) => ({
      ...view,
      marks: view.marks.filter(({ placedBy }) => placedBy !== 'tracker'),
    })),
    followed: null,
  };
}

function isStale(before: MeasurementInput, after: MeasurementInput): boolean {
  const { followed, views } = before;
  if (!followed) return false;
  const seeds = new Set([
    ...[...views, ...followed.sideViews].flatMap(({ marks }) =>
      marks.flatMap(({ followedFrom }) => followedFrom ?? []),
    ),
    // A track that gave no views hangs on them as well.
    ...followed.track.points.map(({ markId }) => markId),
  ]);
  const same = (a: Mark, b: Mark) => a.xPx === b.xPx && a.yPx === b.yPx;
  return views.some((view) => {
    const now = after.views.find(({ state }) => state === view.state);
    if (now?.captureId !== view.captureId || now.frame?.timeTicks !== view.frame?.timeTicks) return true;
    return view.marks.some((mark) => {
      if (!seeds.has(mark.id)) return false;
      const moved = now.marks.find(({ id }) => id === mark.id);
      return !moved || !same(mark, moved);
    });
  });
}

function readAs(mark: Mark, seeds: ReadonlyMap<string, Mark>): Mark {
  if (mark.kind !== 'tape-graduation' || mark.followedFrom === undefined) return mark;
  const seed = seeds.get(mark.followedFrom);
  return seed?.kind === 'tape-graduation' ? { ...mark, readingMm: seed.readingMm } : mark;
}

/** A track that gave no views is there to be put right only. */
export const gaveViews = ({ views }: MeasurementInput): boolean =>
  views.some(({ marks }) => marks.some(({ placedBy }) => placedBy === 'tracker'));
