import { expect, test } from 'vitest';
import { shownFirst } from '../../../src/app/pictures/shown-first.ts';
import { FOOT_CSS, screenFromFrame, viewOfPoints } from '../../../src/app/viewer/view-transform.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { View } from '../../../src/marks/view.ts';
import type { StrokeDrawing } from '../../../src/measurement/measurement.ts';

/** The viewer of a phone 390 pixels wide. */
const SCREEN = { widthCss: 390, heightCss: 439 };
const FRAME = { widthPx: 1920, heightPx: 1080 };

const mark = (kind: 'chamber-face' | 'clevis-pin' | 'camshaft-end', xPx: number, yPx: number): Mark => ({
  kind,
  id: kind,
  xPx,
  yPx,
  sigmaPx: 1,
  placedBy: 'hand',
});

test('the over-stroke step shows rod and dimension, both above the magnification’s buttons', () => {
  const view: View = {
    state: 'released',
    captureId: 'released',
    frame: null,
    marks: [mark('chamber-face', 1200, 600), mark('clevis-pin', 900, 610), mark('camshaft-end', 880, 200)],
  };
  const drawing: StrokeDrawing = {
    state: 'released',
    axis: [
      [1200, 600],
      [700, 616],
    ],
    extensions: [
      [
        [900, 620],
        [906, 790],
      ],
      [
        [780, 624],
        [786, 794],
      ],
    ],
    dimension: [
      [906, 780],
      [786, 784],
    ],
  };
  const points = shownFirst({ step: 'over-stroke', selectedMarkId: null }, view, drawing);
  const shown = viewOfPoints(FRAME, SCREEN, points);
  const rodAndDimension = [[1200, 600], [900, 610], ...drawing.dimension] as const;
  for (const [xPx, yPx] of rodAndDimension) {
    const { xCss, yCss } = screenFromFrame(shown, { xPx, yPx });
    expect(xCss).toBeGreaterThan(0);
    expect(xCss).toBeLessThan(SCREEN.widthCss);
    expect(yCss).toBeGreaterThan(0);
    expect(yCss).toBeLessThan(SCREEN.heightCss - FOOT_CSS);
  }
  // Close up: the camshaft's end is not what it looks at.
  expect(screenFromFrame(shown, { xPx: 880, yPx: 200 }).yCss).toBeLessThan(0);
});
