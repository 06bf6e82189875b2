/**
 * A point that an assist found again beside a mark of another picture shares what that mark is off by, for as long as that one stands
 * where it stood. Then it stands for itself, as sure as both together.
 */
import type { Mark } from '../../marks/mark.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';

export function foundAlone(before: MeasurementInput, after: MeasurementInput): MeasurementInput {
  if (before.views === after.views) return after;
  const [stood, stands] = [byId(before), byId(after)];
  const isShared = ({ followedFrom, placedBy }: Mark) => {
    if (followedFrom === undefined || placedBy !== 'assist') return true;
    const [seed, now] = [stood.get(followedFrom), stands.get(followedFrom)];
    return !seed || (now !== undefined && now.xPx === seed.xPx && now.yPx === seed.yPx);
  };
  if ([...stands.values()].every(isShared)) return after;
  const alone = ({ followedFrom, ...mark }: Mark): Mark => ({
    ...mark,
    sigmaPx: Math.hypot(mark.sigmaPx, stood.get(followedFrom ?? '')?.sigmaPx ?? 0),
  });
  return {
    ...after,
    views: after.views.map((view) => ({
      ...view,
      marks: view.marks.map((mark) => (isShared(mark) ? mark : alone(mark))),
    })),
  };
}

const byId = ({ views }: MeasurementInput): ReadonlyMap<string, Mark> =>
  new Map(views.flatMap(({ marks }) => marks.map((mark) => [mark.id, mark])));
