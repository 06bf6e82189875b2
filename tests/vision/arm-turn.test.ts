import { expect, test } from 'vitest';
import { armTurn } from '../../src/vision/arm-turn.ts';
import { mapped } from '../../src/vision/homography.ts';
import { AXIS_MM, armPicture, planePx } from './arm-picture.ts';

const asked = (fromRad: number, toRad: number, shiftPx = 4) => {
  const [here, there] = [armPicture(fromRad, 0), armPicture(toRad, shiftPx)];
  return armTurn(here.gray, there.gray, { here: here.view, there: there.view });
};

test.each([
  ['to one side', -0.15, 0.2],
  ['to the other', 0.2, -0.15],
])('an arm that turns %s tells where its axis is', (_way, fromRad, toRad) => {
  const found = asked(fromRad, toRad);
  if (!found.ok) throw new Error(found.failure.code);
  const [mark] = found.value.marks;
  const [x, y] = mapped(planePx(0), AXIS_MM);
  const [foundX, foundY] = mark?.placePx ?? [0, 0];
  expect(Math.hypot(foundX - x, foundY - y)).toBeLessThan(2);
  expect(mark?.sigmaPx).toBeLessThan(6);
});

test('an arm that does not turn while the pin is said to go: no axis', () => {
  const [here, there] = [armPicture(0, 0), armPicture(0, 4)];
  const view = { ...there.view, pinMm: armPicture(0.3, 0).view.pinMm };
  const found = armTurn(here.gray, there.gray, { here: here.view, there: view });
  expect(found.ok ? 'found' : found.failure.code).toMatch(/^arm\//);
});

test('poses that are wrong by a third of the turn: chord and spots tell different axes, and nothing is said', () => {
  const [here, there] = [armPicture(-0.15, 0), armPicture(0.2, 4)];
  const view = { ...there.view, pinMm: armPicture(0.08, 0).view.pinMm };
  const found = armTurn(here.gray, there.gray, { here: here.view, there: view });
  expect(found.ok ? 'found' : found.failure.code).toMatch(/^arm\//);
});
