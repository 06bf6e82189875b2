import type { BrakeState } from '../../marks/view.ts';
import { work } from '../stores.ts';
import type { FrameViewerProps } from '../viewer/viewer-props.ts';
import type { Current } from '../work/current.ts';

/** While the person frames the place of the over-stroke mark on this picture; otherwise null. */
export function overStrokeCrop(
  { measurement, place }: Current,
  state: BrakeState,
): NonNullable<FrameViewerProps['cropMode']> | null {
  if (state === 'pulled' || place.step !== 'over-stroke' || place.cropping !== state) return null;
  const before = measurement.overStrokeMark[state];
  if (before === null) return null;
  return {
    rect: before.crop,
    onCrop: ({ xPx, yPx, widthPx, heightPx }) => {
      const crop = { xPx, yPx, widthPx, heightPx };
      work.act({ type: 'set-over-stroke', state, sight: { ...before, crop } });
      work.crop(null);
    },
  };
}
