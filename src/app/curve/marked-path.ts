/** Where on the time axis a person marked a frame: a small triangle under it that points up at the frame. */
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { CurveScale } from './curve-scale.ts';
import { xOfFrame } from './phase-place.ts';

const HALF_CSS = 5;
const HIGH_CSS = 9;

export function markedPath({ curve, marked }: ClipMeasurement, scale: CurveScale): string {
  return marked
    .map(
      (frame) =>
        `M${xOfFrame(curve, scale, frame)} ${scale.baseCss + 1}l${-HALF_CSS} ${HIGH_CSS}h${2 * HALF_CSS}z`,
    )
    .join('');
}
