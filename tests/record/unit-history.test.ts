import { expect, test } from 'vitest';
import { type InspectedStrokes, isSameUnit, unitHistory } from '../../src/record/unit-history.ts';
import type { Position } from '../../src/record/wheel-end.ts';

const LEFT: Position = { axle: 1, side: 'left' };
const RIGHT: Position = { axle: 1, side: 'right' };

function inspection(
  recordId: string,
  unit: string,
  day: number,
  places: readonly Position[],
): InspectedStrokes {
  return {
    recordId,
    unit,
    createdAt: `2026-05-${String(day).padStart(2, '0')}T10:00:00.000Z`,
    strokes: places.map((position) => ({
      position,
      purpose: 'as-found',
      strokeMm: { value: 40 + day, u: 0.5, U95: 0.98 },
      outcome: 'within limit',
    })),
  };
}

test('a unit is told by its name, whatever the case and the spaces; no name is no unit', () => {
  expect(isSameUnit(' GT-07', 'gt-07 ')).toBe(true);
  expect(isSameUnit('Gravel  trailer', 'gravel trailer')).toBe(true);
  expect(isSameUnit('GT-07', 'GT-08')).toBe(false);
  expect(isSameUnit('  ', '')).toBe(false);
});

test('strokes of one unit by wheel end, earliest first, with their record, their U and their finding', () => {
  const history = unitHistory('gt-07', [
    inspection('late', 'GT-07', 20, [RIGHT, LEFT]),
    inspection('other', 'GT-08', 12, [LEFT]),
    inspection('early', ' gt-07 ', 3, [LEFT]),
    { ...inspection('unseen', 'GT-07', 8, [LEFT]), strokes: null },
  ]);
  expect(history.map(({ position }) => position)).toEqual([LEFT, RIGHT]);
  expect(history[0]?.strokes.map(({ recordId, strokeMm }) => [recordId, strokeMm.value])).toEqual([
    ['early', 43],
    ['late', 60],
  ]);
  expect(history[1]?.strokes).toEqual([
    expect.objectContaining({
      createdAt: '2026-05-20T10:00:00.000Z',
      outcome: 'within limit',
      strokeMm: { value: 60, u: 0.5, U95: 0.98 },
    }),
  ]);
  expect(unitHistory('', [inspection('a', '', 3, [LEFT])])).toEqual([]);
});
