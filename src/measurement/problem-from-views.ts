/** From views, references and captures to an adjustment problem; refused with a reason where no honest number can come of it. */
import { cameraPrior } from '../adjustment/camera-prior.ts';
import type { Problem, ProblemView } from '../adjustment/problem.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import type { Capture } from '../captures/capture.ts';
import type { View } from '../marks/view.ts';
import { withFollowedSpots } from './followed-spots.ts';
import { markFault } from './mark-faults.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import { scaleFault } from './scale-faults.ts';

export function problemFromViews(input: MeasureInput): Result<Problem, MeasurementFailure> {
  const fault = markFault(input.views) ?? scaleFault(input.views, input.references);
  if (fault) return fail(fault);
  const all = [...input.views, ...input.sideViews];
  const captures: Capture[] = [];
  for (const { captureId } of all) {
    const capture = input.captures.find(({ id }) => id === captureId);
    if (!capture) return fail({ code: 'measurement/capture-missing', captureId });
    captures.push(capture);
  }
  const cameraKeys = captures.map(({ kind, widthPx, heightPx, rotationDeg, focal35Mm }) =>
    [kind, widthPx, heightPx, input.cameraProfile && rotationDeg, focal35Mm].join(' '),
  );
  const uniqueKeys = [...new Set(cameraKeys)];
  const cameras = uniqueKeys.map((key) =>
    cameraPrior(captures[cameraKeys.indexOf(key)] as Capture, input.cameraProfile),
  );
  const shared = input.cameraStill && cameras.length === 1;
  const views = withFollowedSpots(all).map(
    (view, i): ProblemView => ({
      state: view.state,
      camera: uniqueKeys.indexOf(cameraKeys[i] as string),
      pose: shared ? 0 : i,
      marks: view.marks,
      isSide: i >= input.views.length,
    }),
  );
  return ok({
    cameras,
    poseCount: shared ? 1 : views.length,
    views,
    references: input.references,
    hand: handOf(input.views),
    places: shared ? 'own' : placesOf(input),
  });
}

/**
 * Two pictures are mostly taken from one place. Graduations, a rim or a target show the directions of view better than that supposes
 * them. Side views are frames of the clip that the others are of.
 */
function placesOf({ sideViews, references: { tape, clampBand, target } }: MeasureInput): Problem['places'] {
  if (sideViews.length > 0) return 'filmed';
  return tape || clampBand || target ? 'own' : 'near';
}

/**
 * Which way the camshaft lies from the rod: the sign of (pin - face) x (camshaft - pin) in the picture, summed over the views.
 * Without a camshaft mark the side does not matter: depth is then all that the hand decides, and y has no sense of its own.
 */
function handOf(views: readonly View[]): 1 | -1 {
  let turn = 0;
  for (const { marks } of views) {
    const face = marks.find((m) => m.kind === 'chamber-face');
    const pin = marks.find((m) => m.kind === 'clevis-pin');
    const camshaft = marks.find((m) => m.kind === 'camshaft-end');
    if (!face || !pin || !camshaft) continue;
    const rod = [pin.xPx - face.xPx, pin.yPx - face.yPx] as const;
    const arm = [camshaft.xPx - pin.xPx, camshaft.yPx - pin.yPx] as const;
    turn += (rod[0] * arm[1] - rod[1] * arm[0]) / (Math.hypot(...rod) * Math.hypot(...arm));
  }
  return turn < 0 ? -1 : 1;
}
