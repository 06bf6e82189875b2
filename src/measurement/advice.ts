/**
 * What would shrink the uncertainty of the stroke most.
 *
 * Model    each proposal is tried as if it had been done: the marks it would add are set, free of error, where the adjusted
 *          geometry puts them, and the whole is measured again. What it would give is the U95 of that.
 * Assumes  the present solution is near enough for its covariance to be that of the better set; added marks are as good as the
 *          median of those there.
 * Fails    empty where there is no measurement, or where nothing of the list would help by a sixth.
 */
import { adjust } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { type ChamberToPicture, pictureOf } from '../adjustment/picture-of.ts';
import { zFromDepth } from '../adjustment/problem.ts';
import type { Vec3 } from '../basics/rotation.ts';
import type { Mark, MarkKind } from '../marks/mark.ts';
import type { View } from '../marks/view.ts';
import { measure } from './measure.ts';
import type { MeasureInput } from './measurement.ts';
import { problemFromViews } from './problem-from-views.ts';

export const PROPOSALS = [
  'clamp-band',
  'tape',
  'more-rim-points',
  'rod-line',
  'camshaft-end',
  'arm-length',
  'finer-marks',
] as const;

export type Proposal = (typeof PROPOSALS)[number];
export type Advice = { readonly proposal: Proposal; readonly U95Mm: number };

/** A proposal that leaves more than this share of U is not worth a person's time. */
const WORTH_SHARE = 5 / 6;
/** Any common chamber; its diameter is known when the band is really marked. */
const USUAL_BAND = { diameterMm: 190, uDiameterMm: 1, alongMm: -55 };
const U_ARM_MM = 0.8;
const LEAST_SIGMA_PX = 0.5;
const INCH_MM = 25.4;

/** Best first. */
export function adviceFor(input: MeasureInput): readonly Advice[] {
  const problem = problemFromViews(input);
  const adjusted = problem.ok ? adjust(problem.value) : problem;
  const present = measure(input);
  if (!adjusted.ok || !present.ok) return [];
  const most = WORTH_SHARE * present.value.strokeMm.U95;
  return PROPOSALS.flatMap((proposal) => {
    const better = asIfDone(proposal, input, adjusted.value);
    const result = better ? measure(better) : present;
    return result.ok ? [{ proposal, U95Mm: result.value.strokeMm.U95 }] : [];
  })
    .filter(({ U95Mm }) => U95Mm < most)
    .sort((a, b) => a.U95Mm - b.U95Mm);
}

/** null where the proposal is done already, or cannot be. */
function asIfDone(proposal: Proposal, input: MeasureInput, adjustment: Adjustment): MeasureInput | null {
  const { references } = input;
  const add = (kind: MarkKind, pointsOf: (viewIndex: number) => readonly Added[]): MeasureInput => ({
    ...input,
    views: input.views.map((view, i) => withMarks(view, kind, pointsOf(i), pictureOf(adjustment, i))),
  });
  const fewer = (kind: MarkKind, than: number): boolean =>
    input.views.some(({ marks }) => marks.filter((mark) => mark.kind === kind).length < than);
  switch (proposal) {
    case 'clamp-band':
      if (references.clampBand) return null;
      return {
        ...add('clamp-band', (i) => rim(adjustment, i, USUAL_BAND.alongMm, USUAL_BAND.diameterMm)),
        references: { ...references, clampBand: USUAL_BAND },
      };
    case 'more-rim-points': {
      const { band } = adjustment.layout;
      if (!references.clampBand || band === null || !fewer('clamp-band', 12)) return null;
      const { x } = adjustment.best;
      return add('clamp-band', (i) => rim(adjustment, i, x[band] as number, x[band + 1] as number));
    }
    case 'tape':
      if (references.tape) return null;
      return {
        ...add('tape-graduation', () => graduations(adjustment)),
        references: { ...references, tape: { zeroAtFace: true, unmoved: false } },
      };
    case 'rod-line':
      return fewer('rod-line', 2) ? add('rod-line', (i) => rod(adjustment, i)) : null;
    case 'camshaft-end':
      return adjustment.layout.camshaft !== null && fewer('camshaft-end', 1)
        ? add('camshaft-end', (i) => camshaft(input.views[i] as View, adjustment))
        : null;
    case 'arm-length': {
      const arm = adjustment.layout.camshaft;
      if (references.armLength || arm === null) return null;
      const lengthMm = adjustment.best.x[arm + 3] as number;
      return { ...input, references: { ...references, armLength: { lengthMm, uLengthMm: U_ARM_MM } } };
    }
    case 'finer-marks':
      return { ...input, views: input.views.map(finer) };
  }
}

type Added = { readonly at: Vec3; readonly readingMm?: number };

function withMarks(view: View, kind: MarkKind, added: readonly Added[], picture: ChamberToPicture): View {
  const sigmas = view.marks.map(({ sigmaPx }) => sigmaPx).sort((a, b) => a - b);
  const sigmaPx = sigmas[Math.floor(sigmas.length / 2)] ?? 1;
  const marks = added.map(({ at, readingMm }, i): Mark => {
    const [xPx, yPx] = picture(at);
    const placed = {
      id: `advice-${view.state}-${kind}-${i}`,
      xPx,
      yPx,
      sigmaPx,
      placedBy: 'assist' as const,
    };
    return kind === 'tape-graduation' ? { kind, readingMm: readingMm ?? 0, ...placed } : { kind, ...placed };
  });
  return { ...view, marks: [...view.marks, ...marks] };
}

/** Ten points of the half of the rim that faces the camera. */
function rim(
  adjustment: Adjustment,
  viewIndex: number,
  alongMm: number,
  diameterMm: number,
): readonly Added[] {
  const picture = pictureOf(adjustment, viewIndex);
  const hand = adjustment.problem.hand;
  const radius = diameterMm / 2;
  return Array.from({ length: 10 }, (_, i) => {
    // From the side of the camshaft over the near side to the other.
    const angle = ((i - 4.5) / 9) * 2.8 - (hand * Math.PI) / 2;
    return { at: [alongMm, radius * Math.cos(angle), radius * Math.sin(angle)] as Vec3 };
  }).filter(({ at }) => picture(at).every((px) => px > 0));
}

function graduations({ best, layout, problem }: Adjustment): readonly Added[] {
  const reach = Math.max(...Object.values(layout.pins).map((at) => best.x[at] as number)) + 2 * INCH_MM;
  const z = zFromDepth(-15, problem.hand);
  return Array.from({ length: Math.floor(reach / INCH_MM) }, (_, i) => {
    const readingMm = (i + 1) * INCH_MM;
    return { at: [readingMm, -20, z] as Vec3, readingMm };
  });
}

function rod(adjustment: Adjustment, viewIndex: number): readonly Added[] {
  const { best, layout, problem } = adjustment;
  const at = layout.pins[problem.views[viewIndex]?.state ?? 'released'] as number;
  const [px, py] = [best.x[at] as number, best.x[at + 1] as number];
  const length = px + (best.x[layout.rodInner] as number);
  return [0.25, 0.75].map((share) => ({
    at: [px * share, py * (1 - (px * (1 - share)) / length), 0] as Vec3,
  }));
}

function camshaft(view: View, { best, layout, problem }: Adjustment): readonly Added[] {
  const at = layout.camshaft;
  if (at === null || view.marks.some(({ kind }) => kind === 'camshaft-end')) return [];
  const depth = zFromDepth(best.x[at + 2] as number, problem.hand);
  return [{ at: [best.x[at] as number, best.x[at + 1] as number, depth] }];
}

/** The same marks set at twice the zoom. */
function finer(view: View): View {
  const marks = view.marks.map((mark) => ({
    ...mark,
    sigmaPx: Math.min(mark.sigmaPx, Math.max(LEAST_SIGMA_PX, mark.sigmaPx / 2)),
  }));
  return { ...view, marks };
}
