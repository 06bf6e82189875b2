/** Adds to the views the spots that were followed through a clip, as the adjustment wants them (adjustment/problem.ts). */
import type { View } from '../marks/view.ts';

/** The spot is where the seed was set, by definition; but all that is followed from there is compared with one picture, whose own noise shifts
 * it as much as that of any other: as seen in rendered clips (0.03 to 0.15 px), docs/tracking.md. */
const SPOT_SIGMA_PX = 0.1;

export function withFollowedSpots(views: readonly View[]): readonly View[] {
  const seeds = new Set(views.flatMap(({ marks }) => marks.flatMap((mark) => mark.followedFrom ?? [])));
  return views.map((view) => {
    const spots = view.marks
      .filter(({ id }) => seeds.has(id))
      .map((mark) => ({ ...mark, sigmaPx: SPOT_SIGMA_PX, followedFrom: mark.id }));
    return spots.length > 0 ? { ...view, marks: [...view.marks, ...spots] } : view;
  });
}
