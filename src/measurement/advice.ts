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
import { pictureOf } from '../adjustment/picture-of.ts';
import type { CameraProfile } from '../captures/camera-profile.ts';
import type { MarkKind } from '../marks/mark.ts';
import type { View } from '../marks/view.ts';
import { type Added, camshaft, card, graduations, rim, rod, tiePoints, withMarks } from './advice-marks.ts';
import { measure } from './measure.ts';
import type { MeasureInput } from './measurement.ts';
import { problemFromViews } from './problem-from-views.ts';

export const PROPOSALS = [
  'clamp-band',
  'tape',
  'target',
  'tie-points',
  'pin-end',
  'more-rim-points',
  'rod-line',
  'camshaft-end',
  'arm-length',
  'camera-profile',
  'once-more',
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
const SET_AGAIN: readonly MarkKind[] = ['chamber-face', 'clevis-pin', 'camshaft-end'];
/** A steel rule held over the end of the pin. */
const U_PIN_END_MM = 1.5;
const U_CHECK_MM = 0.3;
/** Fewer than this many of them leave the pictures loose against each other. */
const TIES = 5;

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
  const add = (pointsOf: (viewIndex: number) => readonly Added[]): MeasureInput => ({
    ...input,
    views: input.views.map((view, i) => withMarks(view, pointsOf(i), pictureOf(adjustment, i))),
  });
  const fewer = (kind: MarkKind, than: number): boolean =>
    input.views.some(({ marks }) => marks.filter((mark) => mark.kind === kind).length < than);
  switch (proposal) {
    case 'clamp-band':
      if (references.clampBand) return null;
      return {
        ...add((i) => rim(adjustment, i, USUAL_BAND.alongMm, USUAL_BAND.diameterMm)),
        references: { ...references, clampBand: USUAL_BAND },
      };
    case 'more-rim-points': {
      const { band } = adjustment.layout;
      if (!references.clampBand || band === null || !fewer('clamp-band', 12)) return null;
      const { x } = adjustment.best;
      return add((i) => rim(adjustment, i, x[band] as number, x[band + 1] as number));
    }
    case 'tape':
      if (references.tape) return null;
      return {
        ...add(() => graduations(adjustment)),
        references: { ...references, tape: { zeroAtFace: true, unmoved: false, touchesPin: false } },
      };
    case 'target':
      if (references.target) return null;
      return {
        ...add(() => card(adjustment)),
        references: {
          ...references,
          target: { checkMm: 100, uCheckMm: U_CHECK_MM, unmoved: false, touchesPin: true },
        },
      };
    case 'tie-points':
      return adjustment.problem.poseCount > 1 && adjustment.layout.ties.size < TIES
        ? add(() => tiePoints(adjustment))
        : null;
    case 'pin-end': {
      if (references.pinEnd) return null;
      const outMm = Math.max(0, -(adjustment.best.x[adjustment.layout.pinDepth] as number));
      return { ...input, references: { ...references, pinEnd: { outMm, uOutMm: U_PIN_END_MM } } };
    }
    case 'rod-line':
      return fewer('rod-line', 2) ? add((i) => rod(adjustment, i)) : null;
    case 'camshaft-end':
      return adjustment.layout.camshaft !== null && fewer('camshaft-end', 1)
        ? add((i) => camshaft(input.views[i] as View, adjustment))
        : null;
    case 'arm-length': {
      const arm = adjustment.layout.camshaft;
      if (references.armLength || arm === null) return null;
      const lengthMm = adjustment.best.x[arm + 3] as number;
      return { ...input, references: { ...references, armLength: { lengthMm, uLengthMm: U_ARM_MM } } };
    }
    case 'camera-profile':
      return input.cameraProfile ? null : { ...input, cameraProfile: usualProfile(input, adjustment) };
    case 'once-more':
      return { ...input, views: input.views.map(setTwiceMore) };
    case 'finer-marks':
      return { ...input, views: input.views.map(finer) };
  }
}

/** The same marks set at twice the zoom. */
function finer(view: View): View {
  const marks = view.marks.map((mark) => ({
    ...mark,
    sigmaPx: Math.min(mark.sigmaPx, Math.max(LEAST_SIGMA_PX, mark.sigmaPx / 2)),
  }));
  return { ...view, marks };
}

/** What a calibration of twenty photos of a board comes to, of the camera of the first picture. */
function usualProfile({ views, captures }: MeasureInput, { best, layout }: Adjustment): CameraProfile | null {
  const capture = captures.find(({ id }) => id === views[0]?.captureId);
  if (!capture) return null;
  const onItsSide = capture.rotationDeg % 180 !== 0;
  const [widthPx, heightPx] = onItsSide
    ? [capture.heightPx, capture.widthPx]
    : [capture.widthPx, capture.heightPx];
  const longer = Math.max(widthPx, heightPx);
  return {
    id: 'advice',
    name: 'advice',
    madeAt: '2000-01-01T00:00:00Z',
    widthPx,
    heightPx,
    focalPx: Math.exp(best.x[layout.cameras[0] as number] as number),
    uLnFocal: 0.003,
    cxPx: widthPx / 2,
    cyPx: heightPx / 2,
    uCxPx: 0.0015 * longer,
    uCyPx: 0.0015 * longer,
    k1: 0,
    uK1: 0.003,
    k2: 0,
    uK2: 0.005,
    rmsPx: 0.3,
    photoCount: 20,
    cornerCount: 1000,
  };
}

/** Face, pin and camshaft end set three times where they are set once. */
function setTwiceMore(view: View): View {
  const again = view.marks
    .filter(({ kind }) => SET_AGAIN.includes(kind))
    .filter(({ kind }) => view.marks.filter((mark) => mark.kind === kind).length === 1);
  const settings = again.flatMap((mark) =>
    ['a', 'b'].map((setting) => ({ ...mark, id: `advice-${setting}-${mark.id}` })),
  );
  return { ...view, marks: [...view.marks, ...settings] };
}
