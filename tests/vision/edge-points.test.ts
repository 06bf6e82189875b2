import { expect, test } from 'vitest';
import { findEdgePoints } from '../../src/vision/edge-points.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { levelAt } from '../../src/vision/level-at.ts';
import type { Point } from '../../src/vision/point.ts';
import { tapePicture } from './tape-picture.ts';

const { gray, placeOf } = tapePicture();
const BLADE_MM = 19;
const MIDDLE_PX = 330;

/** Each column shifted down, most at its ends: as a lens bends a line that lies beside the middle of a picture. */
const bentBy = (sagPx: number, x: number) => sagPx * ((x - MIDDLE_PX) / MIDDLE_PX) ** 2;

function bent({ widthPx, heightPx, values }: Gray, sagPx: number): Gray {
  const moved = values.map((_, at) => {
    const [x, y] = [(at % widthPx) + 0.5, Math.floor(at / widthPx) + 0.5];
    return Math.round(levelAt({ widthPx, heightPx, values }, x, y - bentBy(sagPx, x)));
  });
  return { widthPx, heightPx, values: moved };
}

function asked(edgeMm: number, sagPx: number, offPx = 2) {
  const here = ([x, y]: Point): Point => [x, y + bentBy(sagPx, x)];
  const [fromPx, toPx] = [here(placeOf(2, 3)), here(placeOf(9, 3))];
  const [x, y] = here(placeOf(5, edgeMm));
  const question = { fromPx, toPx, lengthMm: 7 * 25.4, nearPx: [x, y + offPx] as const };
  return findEdgePoints(sagPx === 0 ? gray : bent(gray, sagPx), question);
}

/** From the edge as drawn, over the stated uncertainty. */
function offs(edgeMm: number, sagPx: number): readonly number[] {
  const found = asked(edgeMm, sagPx);
  if (!found.ok) throw new Error(found.failure.code);
  const [[x0, y0], [x1, y1]] = [placeOf(0, edgeMm), placeOf(12, edgeMm)];
  return found.value.marks.map(({ placePx: [x, y], sigmaPx }) => {
    const lineY = y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
    return (y - lineY - bentBy(sagPx, x)) / sigmaPx;
  });
}

test.each([0, 19])('points along the edge at %i mm, on past both graduations', (edgeMm) => {
  const found = offs(edgeMm, 0);
  expect(found.length).toBeGreaterThan(8);
  for (const off of found) expect(Math.abs(off)).toBeLessThan(3);
});

test('they follow an edge that the lens bends', () => {
  const found = offs(0, 10);
  // Eight are on the straight part.
  expect(found.length).toBeGreaterThan(12);
  for (const off of found) expect(Math.abs(off)).toBeLessThan(4);
});

test('no edge where none was pointed to', () => {
  expect(asked(BLADE_MM / 2, 0)).toMatchObject({ ok: false, failure: { code: 'tape/no-edge' } });
});
