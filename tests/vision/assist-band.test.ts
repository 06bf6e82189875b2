import { expect, test } from 'vitest';
import { findBand } from '../../src/vision/assist-band.ts';
import { fitEllipse } from '../../src/vision/fit-ellipse.ts';
import { bandPicture, RIM } from './band-picture.ts';
import { outsideOf } from './ellipse-side.ts';

const picture = bandPicture();

/** The rim's true outline: a circle is seen as an ellipse, so through its points this is exact. */
function truthOf({ rim }: ReturnType<typeof bandPicture>) {
  const ellipse = fitEllipse(Array.from({ length: 40 }, (_, i) => rim((i * Math.PI) / 20)));
  if (!ellipse) throw new Error('no ellipse through the rim');
  return ellipse;
}

test('the rim towards the rod is found from face and pin, its points on the true rim, its axis ratio to four thousandths', () => {
  const truth = truthOf(picture);
  const { gray, facePx, pinPx, rim } = picture;
  const found = findBand(gray, { facePx: [facePx[0] + 2, facePx[1] - 2], pinPx, nearPx: rim(0.3) });
  if (!found.ok) throw new Error(found.failure.code);
  const { ratio, uRatio, marks } = found.value;
  expect(Math.abs(ratio - truth.shortPx / truth.longPx)).toBeLessThan(0.004);
  expect(uRatio).toBeLessThan(0.006);
  expect(marks.length).toBeGreaterThanOrEqual(18);
  for (const { placePx, sigmaPx } of marks) {
    expect(Math.abs(outsideOf(truth, placePx))).toBeLessThan(0.6);
    expect(sigmaPx).toBeLessThan(0.8);
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
