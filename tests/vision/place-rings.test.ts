import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { ringAt } from '../../src/vision/coaxial.ts';
import type { Ellipse } from '../../src/vision/fit-ellipse.ts';
import { ringsSeenAt } from '../../src/vision/place-rings.ts';
import { apart, type Point } from '../../src/vision/point.ts';
import { outsideOf } from './ellipse-side.ts';

const lens = { middle: [960, 540] as Point, focalPx: 1500 };
const draw = drawFrom(12);

/** A chamber anywhere to the side of the picture's middle, its rod pointing to it, and a place for its band. */
function drawn() {
  const backRad = draw.uniform(-0.3, 0.3) + (draw.uniform(0, 1) < 0.5 ? Math.PI : 0);
  const lengthPx = draw.uniform(200, 300);
  const aside = draw.uniform(-120, 120);
  const facePx: Point = [960 + draw.uniform(0, 350) * Math.cos(backRad), 540 + aside];
  const place = {
    vertex: draw.uniform(0.4, 1),
    aside: draw.uniform(-0.1, 0.1),
    long: draw.uniform(0.5, 0.9),
    ratio: draw.uniform(0.1, 0.65),
    turnRad: draw.uniform(-0.1, 0.1),
    other: draw.uniform(0.08, 0.15),
    flank: 0,
    score: 1,
  };
  return { chamber: { facePx, backRad, lengthPx }, place };
}

function outlineOf({ chamber: { facePx, backRad, lengthPx }, place }: ReturnType<typeof drawn>) {
  const [c, s] = [Math.cos(backRad), Math.sin(backRad)];
  const vertex: Point = [
    facePx[0] + lengthPx * (c * place.vertex - s * place.aside),
    facePx[1] + lengthPx * (s * place.vertex + c * place.aside),
  ];
  const turn = backRad + place.turnRad;
  const [longPx, shortPx] = [place.long * lengthPx, place.ratio * place.long * lengthPx];
  const centre: Point = [vertex[0] - shortPx * Math.cos(turn), vertex[1] - shortPx * Math.sin(turn)];
  const ellipse: Ellipse = { centre, longPx, shortPx, angleRad: turn + Math.PI / 2 };
  return ellipse;
}

test('circles are seen where the place says, to a hundredth of their size, however far from the middle of the picture', () => {
  const offs = Array.from({ length: 200 }, () => {
    const each = drawn();
    const { axis, rings } = ringsSeenAt(each.chamber, lens, each.place);
    const ellipse = outlineOf(each);
    const along = Array.from({ length: 21 }, (_, i) => (1.3 * (i - 10)) / 10);
    const squares = along.map((w) => outsideOf(ellipse, ringAt(axis, rings[0], w).at) ** 2);
    const rms = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / along.length);
    const otherPx = apart(ringAt(axis, rings[1], 0).at, ringAt(axis, rings[0], 0).at);
    return {
      outline: rms / ellipse.longPx,
      other: Math.abs(otherPx / (each.place.other * each.chamber.lengthPx) - 1),
    };
  });
  const at = (of: (each: (typeof offs)[number]) => number, share: number) =>
    offs.map(of).sort((a, b) => a - b)[Math.floor(share * offs.length)];
  expect(at(({ outline }) => outline, 0.5)).toBeLessThan(0.005);
  expect(at(({ outline }) => outline, 0.95)).toBeLessThan(0.02);
  expect(at(({ other }) => other, 0.95)).toBeLessThan(0.02);
});
