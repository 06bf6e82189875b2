/** The priors of a problem as observation equations, each in the group of the budget that it belongs to. */
import { CHECK_LINE_MM } from '../references/target-card.ts';
import type { BudgetGroup } from './budget-group.ts';
import type { Layout } from './layout.ts';
import type { PriorRow } from './linearise.ts';
import * as known from './priors.ts';
import type { Problem } from './problem.ts';
import { EDGE_BOW, EDGE_OFFSET, EDGE_TURN } from './tape-edge.ts';
import { TAPE_BOW, TAPE_ROW } from './tape-point.ts';

export function priorRows(problem: Problem, layout: Layout, start: ArrayLike<number>): readonly PriorRow[] {
  const rows: PriorRow[] = [];
  const hold = (index: number, [mean, sigma]: known.Prior, group: BudgetGroup): void => {
    rows.push({ index, mean, sigma, group });
  };
  holdCameras(problem, layout, hold);
  const { pinEnd } = problem.references;
  hold(layout.pinDepth, pinEnd ? [-pinEnd.outMm, pinEnd.uOutMm] : known.PIN_DEPTH, 'depth');
  hold(layout.faceDepth, known.FACE_DEPTH, 'depth');
  hold(layout.rodInner, known.ROD_INNER_END, 'mechanism');
  for (const pin of Object.values(layout.pins)) {
    hold(pin, known.PIN_REACH, 'mechanism');
    hold(pin + 1, known.PIN_SIDE, 'mechanism');
  }
  holdArm(problem, layout, hold);
  holdLines(problem, layout, start, hold);
  holdTarget(problem, layout, start, hold);
  for (const at of layout.ties.values()) {
    hold(at, known.TIE_ALONG, 'mechanism');
    hold(at + 1, known.TIE_ASIDE, 'mechanism');
    hold(at + 2, known.TIE_DEPTH, 'mechanism');
  }
  for (const at of layout.offsets.values()) {
    hold(at, known.FOLLOWED_OFFSET, 'marks');
    hold(at + 1, known.FOLLOWED_OFFSET, 'marks');
  }
  const { clampBand } = problem.references;
  if (layout.band !== null && clampBand) {
    hold(layout.band, known.BAND_ALONG, 'clamp-band');
    hold(layout.band + 1, [clampBand.diameterMm, clampBand.uDiameterMm], 'clamp-band');
  }
  for (const mark of problem.views.flatMap((view) => view.marks)) {
    const at = layout.nuisance.get(mark.id);
    if (at === undefined) continue;
    const isRim = mark.kind === 'clamp-band';
    const width = isRim ? known.BAND_ANGLE_RAD : known.POSITION_ALONG_MM;
    hold(at, [start[at] as number, width], isRim ? 'clamp-band' : 'mechanism');
  }
  return rows;
}

type Hold = (index: number, prior: known.Prior, group: BudgetGroup) => void;

function holdCameras(problem: Problem, layout: Layout, hold: Hold): void {
  for (const [i, camera] of problem.cameras.entries()) {
    const at = layout.cameras[i] as number;
    hold(at, [Math.log(camera.focalPx), camera.uLnFocal], 'camera');
    hold(at + 1, [camera.cxPx, camera.uCxPx], 'camera');
    hold(at + 2, [camera.cyPx, camera.uCyPx], 'camera');
    hold(at + 3, [camera.k1, camera.uK1], 'camera');
    hold(at + 4, [camera.k2, camera.uK2], 'camera');
  }
}

function holdArm(problem: Problem, layout: Layout, hold: Hold): void {
  const at = layout.camshaft;
  if (at === null) return;
  const { armLength } = problem.references;
  hold(at, known.CAMSHAFT_ALONG, 'mechanism');
  hold(at + 1, known.CAMSHAFT_ASIDE, 'mechanism');
  hold(at + 2, known.CAMSHAFT_DEPTH, 'depth');
  if (armLength) hold(at + 3, [armLength.lengthMm, armLength.uLengthMm], 'arm-length');
  else hold(at + 3, known.ARM_LENGTH, 'mechanism');
}

function holdTarget(problem: Problem, layout: Layout, start: ArrayLike<number>, hold: Hold): void {
  const { target } = problem.references;
  if (!target || layout.targetScale === null) return;
  const uScale = Math.hypot(target.uCheckMm / target.checkMm, known.CARD_FLATNESS);
  const scale = target.checkMm / CHECK_LINE_MM;
  hold(layout.targetScale, [scale, scale * uScale], 'target');
  for (const at of new Set(layout.targets)) {
    if (at === null) continue;
    hold(at, known.TARGET_ALONG, 'target');
    hold(at + 1, known.TARGET_ASIDE, 'target');
    hold(at + 2, known.TARGET_DEPTH, 'depth');
    // Laid either way round: the start's own direction, and so wide that it says nothing.
    hold(at + 3, [start[at + 3] as number, Math.PI], 'target');
    hold(at + 4, [0, known.TARGET_TILT_RAD], 'target');
    hold(at + 5, [0, known.TARGET_TILT_RAD], 'target');
  }
}

function holdLines(problem: Problem, layout: Layout, start: ArrayLike<number>, hold: Hold): void {
  const { tape, distance } = problem.references;
  if (tape && layout.tapeSlack !== null) {
    hold(
      layout.tapeSlack,
      [0, Math.hypot(known.TAPE_PRINT_MM / markedSpanMm(problem, layout), known.TAPE_STRAIN)],
      'tape',
    );
    for (const at of new Set(layout.tapes)) {
      if (at === null) continue;
      hold(at, [0, tape.zeroAtFace ? known.TAPE_ZERO_AT_FACE_MM : known.TAPE_ZERO_FREE_MM], 'tape');
      hold(at + 1, known.TAPE_SIDE, 'tape');
      hold(at + 2, known.TAPE_DEPTH, 'depth');
      hold(at + 3, [0, known.TAPE_TILT_RAD], 'tape');
      hold(at + 4, [0, known.TAPE_TILT_RAD], 'tape');
      hold(at + TAPE_BOW, [0, known.TAPE_BOW_MM], 'tape');
      hold(at + TAPE_ROW, [0, known.TAPE_ROW_MM], 'tape');
    }
  }
  for (const at of new Set(layout.tapeEdges)) {
    if (at === null) continue;
    hold(at, EDGE_OFFSET, 'tape');
    hold(at + 1, EDGE_TURN, 'tape');
    hold(at + 2, EDGE_BOW, 'tape');
  }
  if (distance && layout.distance !== null) {
    hold(layout.distance, [distance.distanceMm, distance.uDistanceMm], 'distance');
    for (const at of layout.distances) {
      if (at === null) continue;
      hold(at, known.DISTANCE_ALONG, 'distance');
      hold(at + 1, known.DISTANCE_SIDE, 'distance');
      hold(at + 2, known.DISTANCE_DEPTH, 'depth');
      // Any direction in the plane: the start's own, and so wide that it says nothing.
      hold(at + 3, [start[at + 3] as number, Math.PI], 'distance');
      hold(at + 4, [0, known.DISTANCE_TILT_RAD], 'distance');
    }
  }
}

/** From the first to the last marked graduation, of the hold of the tape that shows least, mm; one mark alone tells no scale. */
function markedSpanMm({ views }: Problem, layout: Layout): number {
  const spans = [...new Set(layout.tapes)].flatMap((hold) => {
    if (hold === null) return [];
    const readings = views
      .filter((_view, i) => layout.tapes[i] === hold)
      .flatMap(({ marks }) => marks.flatMap((m) => (m.kind === 'tape-graduation' ? [m.readingMm] : [])));
    const span = Math.max(...readings) - Math.min(...readings);
    return span > 0 ? [span] : [];
  });
  return Math.min(...spans);
}
