import { expect, test } from 'vitest';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { simulate } from '../simulation/scene.ts';

const { input, truth } = simulate({
  seed: 8,
  reference: 'tape+band',
  sigmaPx: 0.2,
  rodMarks: true,
  cameraStill: true,
});
const OFF_PX = 4;
const AGAIN_PX = 0.2;

/** Pin and camshaft 4 px beside their middles, the camshaft's spot turned with the arm. */
function spots(view: View, turnRad: number, rest: Partial<Mark>, seedOf?: (kind: string) => string): View {
  const marks = view.marks.map((mark): Mark => {
    if (mark.kind !== 'clevis-pin' && mark.kind !== 'camshaft-end') return mark;
    const turn = mark.kind === 'camshaft-end' ? turnRad : 0;
    const [xPx, yPx] = [mark.xPx + OFF_PX * Math.cos(turn), mark.yPx + OFF_PX * Math.sin(turn)];
    const from = seedOf ? { followedFrom: seedOf(mark.kind) } : {};
    return { ...mark, ...rest, xPx, yPx, ...from } as Mark;
  });
  return { ...view, marks };
}

function armRad({ marks }: View): number {
  const [pin, camshaft] = ['clevis-pin', 'camshaft-end'].map((kind) =>
    marks.find((mark) => mark.kind === kind),
  );
  return pin && camshaft ? Math.atan2(pin.yPx - camshaft.yPx, pin.xPx - camshaft.xPx) : Number.NaN;
}

function measured(shared: boolean) {
  const [released, applied] = input.views as readonly [View, View];
  const first = spots(released, 0, { sigmaPx: OFF_PX });
  const seedOf = (kind: string) => first.marks.find((mark) => mark.kind === kind)?.id ?? '';
  const turnRad = armRad(applied) - armRad(released);
  const second = shared
    ? spots(applied, turnRad, { sigmaPx: AGAIN_PX }, seedOf)
    : spots(applied, turnRad, { sigmaPx: Math.hypot(OFF_PX, AGAIN_PX) });
  const views: MeasureInput['views'] = [first, second];
  const result = measure({ ...input, views });
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

test('what the marks of both pictures are off by alike does not widen the stroke, and the arm angle it does', () => {
  const [alone, shared] = [measured(false), measured(true)];
  expect(shared.strokeMm.U95).toBeLessThan(0.7 * alone.strokeMm.U95);
  expect(Math.abs(shared.strokeMm.value - truth.strokeMm)).toBeLessThan(shared.strokeMm.U95);
  const [angleAlone, angle] = [alone.armAngleAppliedRad, shared.armAngleAppliedRad];
  expect(angle?.U95).toBeGreaterThan(0.6 * (angleAlone?.U95 ?? Number.NaN));
  expect(shared.fit.inflation).toBe(1);
});
