import { expect, test } from 'vitest';
import { GEAR_AT_REST, gearAfter } from '../../src/app/viewer/gear.ts';
import { nextGesture } from '../../src/app/viewer/gesture.ts';
import type { GestureAct, Mode, PointerHand, PointerInput } from '../../src/app/viewer/gesture-act.ts';
import { NO_GESTURE } from '../../src/app/viewer/gesture-phase.ts';
import { fittedView } from '../../src/app/viewer/view-transform.ts';

// A tenth of full size, the picture's corner in the screen's: screen (x, y) is frame (10 x, 10 y).
const view = fittedView({ widthPx: 4000, heightPx: 3000 }, { widthCss: 400, heightCss: 300 });
const mark = (id: string, xPx: number, yPx: number) => ({
  id,
  xPx,
  yPx,
  name: id,
  selected: false,
  automatic: false,
  doubtful: false,
  minor: false,
});
const marks = [mark('face', 1000, 1500), mark('pin', 1300, 1500), mark('rod', 1300, 1620)];

type Event = readonly [change: PointerInput['change'], id: number, x: number, y: number, timeMs?: number];

function played(hand: PointerHand, mode: Mode, events: readonly Event[]): GestureAct[] {
  let gesture = NO_GESTURE;
  return events.flatMap(([change, id, xCss, yCss, timeMs], index) => {
    const input = { change, id, hand, at: { xCss, yCss }, timeMs: timeMs ?? 16 * index };
    const step = nextGesture(gesture, input, { view, marks, mode });
    gesture = step.gesture;
    return [...step.acts];
  });
}

const only = (acts: readonly GestureAct[], ...names: GestureAct['act'][]) =>
  acts.filter(({ act }) => names.includes(act));

test('a mouse click places under the pointer, trembling by less than three pixels', () => {
  const acts = played('mouse', 'place', [
    ['down', 1, 200, 100],
    ['move', 1, 201, 101],
    ['up', 1, 201, 101],
  ]);
  expect(only(acts, 'place', 'pan')).toEqual([
    { act: 'place', point: { xPx: 2010, yPx: 1010 }, hand: 'mouse' },
  ]);
});

test('a mouse drag pans while a mark is asked for, all the way from the press', () => {
  const acts = played('mouse', 'place', [
    ['down', 1, 200, 100],
    ['move', 1, 210, 100],
    ['move', 1, 230, 90],
    ['up', 1, 230, 90],
  ]);
  expect(only(acts, 'place', 'pan')).toEqual([
    { act: 'pan', dxCss: 10, dyCss: 0 },
    { act: 'pan', dxCss: 20, dyCss: -10 },
  ]);
});

test('a finger places where it is lifted, and aims until then', () => {
  const acts = played('finger', 'place', [
    ['down', 1, 200, 100],
    ['move', 1, 220, 120],
    ['up', 1, 221, 120],
  ]);
  expect(only(acts, 'place')).toEqual([{ act: 'place', point: { xPx: 2210, yPx: 1200 }, hand: 'finger' }]);
  const aims = only(acts, 'aim').map((act) => (act.act === 'aim' ? act.aim?.point.xPx : null));
  expect(aims).toEqual([2000, 2200, undefined]);
});

test('a second finger takes the placing back and pinches; the finger that stays does not place', () => {
  const acts = played('finger', 'place', [
    ['down', 1, 100, 50],
    ['down', 2, 200, 50],
    ['move', 2, 220, 50],
    ['up', 2, 220, 50],
    ['move', 1, 110, 50],
    ['up', 1, 110, 50],
  ]);
  expect(only(acts, 'place')).toEqual([]);
  expect(only(acts, 'pinch')).toHaveLength(1);
  expect(acts.at(1)).toEqual({ act: 'aim', aim: null });
  expect(only(acts, 'pan')).toEqual([{ act: 'pan', dxCss: 10, dyCss: 0 }]);
});

test('nothing is placed outside the picture', () => {
  for (const hand of ['finger', 'mouse'] as const)
    expect(
      only(
        played(hand, 'place', [
          ['down', 1, 200, 310],
          ['up', 1, 200, 310],
        ]),
        'place',
      ),
    ).toEqual([]);
});

test('takes hold of a mark within reach, selects it, begins and ends one move, all the way from the press', () => {
  const acts = played('mouse', 'look', [
    ['down', 1, 121, 150],
    ['move', 1, 123, 150],
    ['move', 1, 131, 146],
    ['up', 1, 131, 146],
  ]);
  expect(only(acts, 'select', 'move-begin', 'move', 'move-end')).toEqual([
    { act: 'select', id: 'pin' },
    { act: 'move-begin', id: 'pin' },
    { act: 'move', id: 'pin', point: { xPx: 1400, yPx: 1460 }, hand: 'mouse', gearing: 1 },
    { act: 'move-end', id: 'pin' },
  ]);
});

test('of two marks within reach the nearer one is meant', () => {
  const acts = played('mouse', 'look', [
    ['down', 1, 130, 157],
    ['up', 1, 130, 157],
  ]);
  expect(acts).toEqual([{ act: 'select', id: 'rod' }]);
});

test('a tap on a mark selects without moving it', () => {
  const acts = played('finger', 'look', [
    ['down', 1, 112, 160],
    ['move', 1, 115, 162],
    ['up', 1, 115, 162],
  ]);
  expect(acts).toEqual([{ act: 'select', id: 'face' }]);
});

test('a slow finger moves its mark by a quarter of its own way', () => {
  const slow: Event[] = Array.from({ length: 41 }, (_, n) => ['move', 1, 137 + n, 150, 500 + 100 * n]);
  const moves = only(played('finger', 'look', [['down', 1, 130, 150, 0], ...slow]), 'move');
  const last = moves.at(-1);
  // From the end of the trembling at 7 px: 40 px of finger make 10 px of mark, 100 px of frame.
  expect(last?.act === 'move' && last.gearing).toBe(0.25);
  expect(last?.act === 'move' && last.point.xPx).toBeGreaterThan(1390);
  expect(last?.act === 'move' && last.point.xPx).toBeLessThan(1420);
});

test('a quick finger carries its mark along', () => {
  let gear = GEAR_AT_REST;
  for (let n = 0; n < 30; n++) gear = gearAfter(gear, 16, 16);
  expect(gear.gearing).toBe(1);
  for (let n = 0; n < 30; n++) gear = gearAfter(gear, 1, 16);
  expect(gear.gearing).toBe(0.25);
});

test('a second finger on a held mark cancels the move', () => {
  const acts = played('finger', 'look', [
    ['down', 1, 130, 150],
    ['move', 1, 145, 150],
    ['move', 1, 160, 150],
    ['down', 2, 250, 150],
    ['up', 2, 250, 150],
    ['up', 1, 160, 150],
  ]);
  expect(only(acts, 'move-cancel')).toEqual([{ act: 'move-cancel', id: 'pin' }]);
  expect(only(acts, 'move-end')).toEqual([]);
});

test('a move stops at the edge of the picture', () => {
  const acts = played('mouse', 'look', [
    ['down', 1, 130, 150],
    ['move', 1, -300, 900],
  ]);
  expect(only(acts, 'move')).toMatchObject([{ point: { xPx: 0, yPx: 3000 } }]);
});

test('a tap beside everything deselects, a second one zooms in there', () => {
  const tap = (timeMs: number): Event[] => [
    ['down', 1, 300, 100, timeMs],
    ['up', 1, 300, 100, timeMs + 50],
  ];
  expect(played('finger', 'look', [...tap(0), ...tap(200)])).toEqual([
    { act: 'select', id: null },
    { act: 'zoom-in', at: { xCss: 300, yCss: 100 } },
  ]);
  expect(only(played('finger', 'look', [...tap(0), ...tap(900)]), 'zoom-in')).toEqual([]);
});

test('a cancelled touch places nothing and leaves nothing behind', () => {
  const acts = played('finger', 'place', [
    ['down', 1, 200, 100],
    ['cancel', 1, 200, 100],
    ['down', 2, 210, 100],
    ['up', 2, 210, 100],
  ]);
  expect(only(acts, 'place')).toHaveLength(1);
});

test('a mouse that hovers aims only while a mark is asked for', () => {
  expect(played('mouse', 'look', [['move', 1, 200, 100]])).toEqual([]);
  expect(played('mouse', 'place', [['move', 1, 200, 100]])).toMatchObject([
    { act: 'aim', aim: { point: { xPx: 2000, yPx: 1000 } } },
  ]);
});

test('a drag in the cutting mode gives the rectangle in frame pixels, whichever way it was drawn', () => {
  const acts = played('mouse', 'crop', [
    ['down', 1, 300, 200],
    ['move', 1, 150, 150],
    ['up', 1, 100, 150],
  ]);
  expect(only(acts, 'crop')).toEqual([
    { act: 'crop', rect: { xPx: 1000, yPx: 1500, widthPx: 2000, heightPx: 500 } },
  ]);
});
