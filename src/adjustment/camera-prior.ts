/**
 * What is known of a camera before the adjustment: from its profile where one fits, else from the file and from usual lenses.
 *
 * Model    the profile's principal point is given in the stored picture; turned clockwise by 90 degrees, (x, y) of a picture of
 *          height H comes to (H - y, x), and so on for further turns.
 * Assumes  a profile holds for pictures of just its size; focusing nearer or farther changes f by half a percent (common
 *          practice, no source).
 */
import type { CameraProfile } from '../captures/camera-profile.ts';
import type { Capture } from '../captures/capture.ts';
import { focalPrior } from './focal-prior.ts';
import { K1_SIGMA, K1_SIGMA_WIDE, K2_SIGMA, PRINCIPAL_POINT_SHARE, WIDE_BELOW_35_MM } from './priors.ts';
import type { CameraPrior } from './problem.ts';

const REFOCUS = 0.005;

export function cameraPrior(capture: Capture, profile: CameraProfile | null): CameraPrior {
  const calibrated = profile && priorFromProfile(capture, profile);
  if (calibrated) return calibrated;
  const { widthPx, heightPx, focal35Mm } = capture;
  const isWide = focal35Mm !== null && focal35Mm < WIDE_BELOW_35_MM;
  const offPx = PRINCIPAL_POINT_SHARE * Math.max(widthPx, heightPx);
  return {
    ...focalPrior(capture),
    cxPx: widthPx / 2,
    cyPx: heightPx / 2,
    uCxPx: offPx,
    uCyPx: offPx,
    k1: 0,
    uK1: isWide ? K1_SIGMA_WIDE : K1_SIGMA,
    k2: 0,
    uK2: K2_SIGMA,
  };
}

/** Whether the profile was made at the capture's own picture size. */
export function profileFits(capture: Capture, profile: CameraProfile): boolean {
  return priorFromProfile(capture, profile) !== null;
}

function priorFromProfile(capture: Capture, profile: CameraProfile): CameraPrior | null {
  const { widthPx, heightPx, rotationDeg } = capture;
  const onItsSide = rotationDeg % 180 !== 0;
  const stored = onItsSide ? [heightPx, widthPx] : [widthPx, heightPx];
  if (profile.widthPx !== stored[0] || profile.heightPx !== stored[1]) return null;
  let [x, y, height] = [profile.cxPx, profile.cyPx, profile.heightPx];
  let width = profile.widthPx;
  for (let turned = 0; turned < rotationDeg; turned += 90) {
    [x, y] = [height - y, x];
    [width, height] = [height, width];
  }
  const [uCxPx, uCyPx] = onItsSide ? [profile.uCyPx, profile.uCxPx] : [profile.uCxPx, profile.uCyPx];
  const { focalPx, k1, uK1, k2, uK2 } = profile;
  const uLnFocal = Math.hypot(profile.uLnFocal, REFOCUS);
  return { focalPx, uLnFocal, cxPx: x, cyPx: y, uCxPx, uCyPx, k1, uK1, k2, uK2 };
}
