/**
 * Where marks that are not there yet would lie, by the adjusted geometry: for trying what they would give.
 *
 * Frame  chamber frame, mm; then projected by the adjusted camera of the view.
 */

import type { Adjustment } from '../adjustment/adjustment.ts';
import { type ChamberToPicture, pictureOf } from '../adjustment/picture-of.ts';
import { zFromDepth } from '../adjustment/problem.ts';
import { middleOf } from '../basics/middle.ts';
import type { Vec3 } from '../basics/rotation.ts';
import { MM_PER_INCH } from '../basics/units.ts';
import type { Mark } from '../marks/mark.ts';
import type { View } from '../marks/view.ts';
import { MARKER_COUNT, targetCorner } from '../references/target-card.ts';

type SortOf<M> = M extends Mark ? Omit<M, 'id' | 'xPx' | 'yPx' | 'sigmaPx' | 'placedBy'> : never;

/** A mark to be, at a place of the chamber frame. */
export type Added = { readonly at: Vec3; readonly sort: SortOf<Mark>; readonly sigmaPx?: number };

/** The print is found by its coded markers, finer than a hand marks. */
const SIGMA_OF_FOUND_PX = 0.25;

export function withMarks(view: View, added: readonly Added[], picture: ChamberToPicture): View {
  const median = middleOf(view.marks.map(({ sigmaPx }) => sigmaPx)) ?? 1;
  const marks = added.map(({ at, sort, sigmaPx = median }, i): Mark => {
    const [xPx, yPx] = picture(at);
    const id = `advice-${view.state}-${sort.kind}-${i}`;
    return { ...sort, id, xPx, yPx, sigmaPx, placedBy: 'assist' as const };
  });
  return { ...view, marks: [...view.marks, ...marks] };
}

/** Ten points of the half of the rim that faces the camera. */
export function rim(
  adjustment: Adjustment,
  viewIndex: number,
  alongMm: number,
  diameterMm: number,
): readonly Added[] {
  const picture = pictureOf(adjustment, viewIndex);
  const hand = adjustment.problem.hand;
  const radius = diameterMm / 2;
  return Array.from({ length: 10 }, (_, i): Added => {
    // From the side of the camshaft over the near side to the other.
    const angle = ((i - 4.5) / 9) * 2.8 - (hand * Math.PI) / 2;
    return {
      at: [alongMm, radius * Math.cos(angle), radius * Math.sin(angle)],
      sort: { kind: 'clamp-band' },
    };
  }).filter(({ at }) => picture(at).every((px) => px > 0));
}

export function graduations({ best, layout, problem }: Adjustment): readonly Added[] {
  const reach = Math.max(...Object.values(layout.pins).map((at) => best.x[at] as number)) + 2 * MM_PER_INCH;
  const z = zFromDepth(-15, problem.hand);
  return Array.from({ length: Math.floor(reach / MM_PER_INCH) }, (_, i): Added => {
    const readingMm = (i + 1) * MM_PER_INCH;
    return { at: [readingMm, -20, z], sort: { kind: 'tape-graduation', readingMm } };
  });
}

/** The card laid along the rod on the end of the pin, on the side away from the camshaft. */
export function card({ best, layout, problem }: Adjustment): readonly Added[] {
  const z = zFromDepth(best.x[layout.pinDepth] as number, problem.hand);
  return Array.from({ length: MARKER_COUNT }, (_, marker) => marker).flatMap((marker) =>
    ([0, 1, 2, 3] as const).flatMap((corner): Added[] => {
      const place = targetCorner(marker, corner);
      if (!place) return [];
      const sort = { kind: 'target-corner', marker, corner } as const;
      return [{ at: [place.uMm, problem.hand * place.vMm, z], sort, sigmaPx: SIGMA_OF_FOUND_PX }];
    }),
  );
}

export function rod(adjustment: Adjustment, viewIndex: number): readonly Added[] {
  const { best, layout, problem } = adjustment;
  const at = layout.pins[problem.views[viewIndex]?.state ?? 'released'] as number;
  const [px, py] = [best.x[at] as number, best.x[at + 1] as number];
  const length = px + (best.x[layout.rodInner] as number);
  return [0.25, 0.75].map((share) => ({
    at: [px * share, py * (1 - (px * (1 - share)) / length), 0],
    sort: { kind: 'rod-line' },
  }));
}

export function camshaft(view: View, { best, layout, problem }: Adjustment): readonly Added[] {
  const at = layout.camshaft;
  if (at === null || view.marks.some(({ kind }) => kind === 'camshaft-end')) return [];
  const depth = zFromDepth(best.x[at + 2] as number, problem.hand);
  return [{ at: [best.x[at] as number, best.x[at + 1] as number, depth], sort: { kind: 'camshaft-end' } }];
}

/** Five points of bracket, chamber and axle: apart in every direction, in depth too. */
const FIXED_PLACES: readonly Vec3[] = [
  [-40, 60, 30],
  [-30, -80, 10],
  [60, 110, 40],
  [170, 190, 20],
  [120, -70, 90],
];

export function tiePoints({ problem }: Adjustment): readonly Added[] {
  return FIXED_PLACES.map(([x, y, depth], i) => ({
    at: [x, y, zFromDepth(depth, problem.hand)],
    sort: { kind: 'tie-point', tie: `advice-${i}` },
  }));
}
