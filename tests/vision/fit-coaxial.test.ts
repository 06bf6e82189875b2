import { expect, test } from 'vitest';
import { ellipseOf, opennessOf, ringAt, tiltFor } from '../../src/vision/coaxial.ts';
import { type Coaxial, fitCoaxial, unknownsOf } from '../../src/vision/fit-coaxial.ts';
import { fitEllipse } from '../../src/vision/fit-ellipse.ts';
import { bandPicture, RIM } from './band-picture.ts';
import { outsideOf } from './ellipse-side.ts';

const axis = { middle: [400, 300], focalPx: 900, foot: [60, -40], turnRad: 0.1, tiltRad: 0.3 } as const;

test('what a ring is seen as is the outline its points and normals tell, and opens as the axis turns', () => {
  const ring = { behind: 20, radius: 150 };
  const ellipse = ellipseOf(axis, ring);
  if (!ellipse) throw new Error('no ellipse');
  for (const w of [-1.2, -0.4, 0, 0.9]) {
    const { at, normal } = ringAt(axis, ring, w);
    expect(Math.abs(outsideOf(ellipse, at))).toBeLessThan(1e-6);
    expect(outsideOf(ellipse, [at[0] + 2 * normal[0], at[1] + 2 * normal[1]])).toBeCloseTo(2, 3);
  }
  expect(tiltFor(axis, opennessOf(axis))).toBeCloseTo(axis.tiltRad, 9);
});

/** band-picture.ts draws by formulas of its own. */
test('through the true places of two rims and a flank the fit finds their sizes and how far they lie apart', () => {
  const { rim, gray } = bandPicture();
  const size = 900 / 640;
  const rings = [
    RIM,
    { ...RIM, behindMm: RIM.behindMm + 17 },
    { behindMm: RIM.behindMm - 6, radiusMm: 93.5 },
  ];
  let coaxial: Coaxial = {
    axis: {
      middle: [300, gray.heightPx / 2],
      focalPx: 900,
      foot: [70, 4],
      turnRad: 0.02,
      tiltRad: 0.26,
    },
    rings: [
      { behind: 0, radius: 105 * size },
      { behind: 15 * size, radius: 104 * size },
      { behind: -8 * size, radius: 95 * size },
    ],
  };
  const seen = rings.map((ring) => {
    const ellipse = fitEllipse(Array.from({ length: 40 }, (_, i) => rim((i * Math.PI) / 20, ring)));
    if (!ellipse) throw new Error('no ellipse');
    return ellipse;
  });
  let uTiltRad = 1;
  for (let round = 0; round < 12; round++) {
    const { axis: from, rings: now } = coaxial;
    const edges = seen.map((ellipse, r) =>
      Array.from({ length: 24 }, (_, i) => {
        const w = ((i + 0.5) / 12 - 1) * 1.2;
        const outline = ringAt(from, now[r] ?? now[0], w);
        return { w, outline, offPx: -outsideOf(ellipse, outline.at), steep: 9 };
      }),
    );
    const fit = fitCoaxial(coaxial, edges, 900);
    if (!fit) throw new Error('left open');
    coaxial = fit.coaxial;
    uTiltRad = Math.sqrt(fit.covariance[3 * unknownsOf(coaxial) + 3] ?? 1);
  }
  const [first, other, flank] = coaxial.rings;
  expect(coaxial.axis.tiltRad).toBeCloseTo(0.32, 2);
  expect(other.radius / first.radius).toBeCloseTo(1, 2);
  expect((flank?.radius ?? 0) / first.radius).toBeCloseTo(93.5 / 102.8, 2);
  expect(other.behind / first.radius).toBeCloseTo(17 / 102.8, 2);
  expect(uTiltRad).toBeLessThan(0.02);
});
