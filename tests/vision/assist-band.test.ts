import { expect, test } from 'vitest';
import { arcAngle, arcNormal, arcPoint, fitArc } from '../../src/vision/arc.ts';
import { findBand } from '../../src/vision/assist-band.ts';
import { bandPicture, RIM } from './band-picture.ts';

const picture = bandPicture();

/** The rim's true outline, by the same fit as marks get: exact, since a circle is seen as an ellipse. */
function truthOf({ rim }: ReturnType<typeof bandPicture>) {
  const points = Array.from({ length: 41 }, (_, i) => ({ placePx: rim((i / 20 - 1) * 1.4), weight: 1 }));
  const [vertex, top] = [rim(0), rim(1.4)];
  const start = {
    centre: [vertex[0] - 40, vertex[1]] as const,
    longPx: Math.abs(top[1] - vertex[1]),
    shortPx: 40,
    turnRad: 0,
  };
  const fit = fitArc(start, points);
  if (!fit) throw new Error('no ellipse through the rim');
  return fit.arc;
}

test('the rim towards the rod is found from face and pin, its points on the true rim, its axis ratio to a hundredth', () => {
  const truth = truthOf(picture);
  const { gray, facePx, pinPx, rim } = picture;
  const found = findBand(gray, { facePx: [facePx[0] + 2, facePx[1] - 2], pinPx, nearPx: rim(0.3) });
  if (!found.ok) throw new Error(found.failure.code);
  expect(Math.abs(found.value.ratio - truth.shortPx / truth.longPx)).toBeLessThan(0.005);
  expect(found.value.marks.length).toBeGreaterThanOrEqual(20);
  for (const { placePx, sigmaPx } of found.value.marks) {
    const w = arcAngle(truth, placePx);
    const [[x, y], [nx, ny]] = [arcPoint(truth, w), arcNormal(truth, w)];
    expect(Math.abs((placePx[0] - x) * nx + (placePx[1] - y) * ny)).toBeLessThan(0.6);
    expect(sigmaPx).toBeLessThan(0.6);
  }
});

test('a touch far from the band, or a blank picture: refused with the reason', () => {
  const { gray, facePx, pinPx, rim } = picture;
  const codeOf = (found: ReturnType<typeof findBand>) => (found.ok ? 'found' : found.failure.code);
  const [x, y] = rim(0, { ...RIM, behindMm: -60 });
  expect(codeOf(findBand(gray, { facePx, pinPx, nearPx: [x, y] }))).toBe('band/elsewhere');
  const blank = { ...gray, values: new Uint8Array(gray.values.length).fill(90) };
  expect(codeOf(findBand(blank, { facePx, pinPx, nearPx: null }))).toBe('band/none');
});
