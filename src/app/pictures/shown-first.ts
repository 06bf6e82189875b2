import type { View } from '../../marks/view.ts';
import type { StrokeDrawing } from '../../measurement/measurement.ts';
import type { FramePoint } from '../viewer/view-transform.ts';
import type { Step } from '../work/steps.ts';

/** What a step looks at: the finding the whole brake with the stroke's dimension, the over-stroke mark the rod; else the whole picture. */
export function shownFirst(step: Step, view: View, drawing: StrokeDrawing | null): readonly FramePoint[] {
  if (step === 'over-stroke')
    return view.marks.filter(({ kind }) => kind === 'chamber-face' || kind === 'clevis-pin');
  if (step !== 'finding') return [];
  const drawn = drawing ? [...drawing.extensions.flat(), ...drawing.dimension] : [];
  return [...view.marks, ...drawn.map(([xPx, yPx]) => ({ xPx, yPx }))];
}
