import type { View } from '../../marks/view.ts';
import type { PicturePoint, StrokeDrawing } from '../../measurement/measurement.ts';
import type { FramePoint } from '../viewer/view-transform.ts';
import type { Place } from '../work/place.ts';
import { markedState } from '../work/steps.ts';

/** Half the side of what is shown about a mark that is gone to. */
const ABOUT_MARK_PX = 150;

/**
 * What a step looks at: the finding the whole brake, the over-stroke mark the rod, both with the stroke's dimension; marking the mark
 * that was gone to; else the whole picture.
 */
export function shownFirst(
  { step, selectedMarkId }: Pick<Place, 'step' | 'selectedMarkId'>,
  view: View,
  drawing: StrokeDrawing | null,
): readonly FramePoint[] {
  const selected = view.marks.find(({ id }) => id === selectedMarkId);
  if (markedState(step) === view.state && selected)
    return [-ABOUT_MARK_PX, ABOUT_MARK_PX].map((off) => ({
      xPx: selected.xPx + off,
      yPx: selected.yPx + off,
    }));
  const points = (drawn: readonly PicturePoint[]) => drawn.map(([xPx, yPx]) => ({ xPx, yPx }));
  if (step === 'over-stroke')
    return [
      ...view.marks.filter(({ kind }) => kind === 'chamber-face' || kind === 'clevis-pin'),
      ...points(drawing?.dimension ?? []),
    ];
  if (step !== 'finding') return [];
  return [...view.marks, ...points(drawing ? [...drawing.extensions.flat(), ...drawing.dimension] : [])];
}
