/** What a picture is like, against blur, smear, exposure and glare of known size. */
import { expect, test } from 'vitest';
import { type Picture, pictureQuality } from '../../src/vision/picture-quality.ts';
import { starPicture } from './star-picture.ts';

const all = { aboutPx: null, tape: [] };

/** Of a pixel's own square, beside the blur that was put on. */
const PIXEL = 1 / Math.sqrt(12);

test('the width of its edges is that of the known blur', () => {
  for (const blurPx of [0.8, 1.5, 3]) {
    const { blur } = pictureQuality(starPicture({ blurPx }), all);
    const want = Math.hypot(blurPx, PIXEL);
    expect(blur?.mostPx).toBeGreaterThan(0.9 * want);
    expect(blur?.mostPx).toBeLessThan(1.2 * want);
    expect(blur?.leastPx).toBeGreaterThan(0.85 * want);
  }
});

test('a smear is told from blur, with its width and its way', () => {
  for (const deg of [0, 125]) {
    const alongRad = (deg * Math.PI) / 180;
    const { blur } = pictureQuality(starPicture({ blurPx: 1, smear: { lengthPx: 10, alongRad } }), all);
    if (!blur || blur.alongRad === null) throw new Error('no way told');
    // An even smear of length l scatters by l over the root of 12.
    const want = Math.hypot(1, PIXEL, 10 / Math.sqrt(12));
    expect(blur.mostPx).toBeGreaterThan(0.8 * want);
    expect(blur.mostPx).toBeLessThan(1.25 * want);
    expect(blur.leastPx).toBeLessThan(1.7);
    expect(Math.abs(Math.sin(blur.alongRad - alongRad))).toBeLessThan(Math.sin((10 * Math.PI) / 180));
  }
});

test('burnt and dark shares follow the exposure', () => {
  const light = (exposure: number) => pictureQuality(starPicture({ exposure, noise: 0 }), all).light;
  expect(light(1).burntShare).toBe(0);
  expect(light(1).darkShare).toBe(0);
  // Bright wedges, half of the picture, go over 1; at a twentieth the dark ones fall below 0.012, the bright ones do not.
  expect(light(2.2).burntShare).toBeGreaterThan(0.45);
  expect(light(2.2).burntShare).toBeLessThan(0.55);
  expect(light(0.05).darkShare).toBeGreaterThan(0.45);
  expect(light(0.05).darkShare).toBeLessThan(0.55);
});

test('glare on the tape is the share of it that is burnt', () => {
  const picture = starPicture();
  const rgba = picture.rgba.slice();
  for (let y = 100; y < 116; y++)
    for (let x = 140; x < 240; x++) rgba.set([255, 255, 255, 255], 4 * (y * picture.widthPx + x));
  const glaring: Picture = { ...picture, rgba };
  const tape = [
    { placePx: [40, 100] as const, readingMm: 0 },
    { placePx: [400, 100] as const, readingMm: 180 },
  ];
  expect(pictureQuality(picture, { aboutPx: null, tape }).glareShare).toBe(0);
  const share = pictureQuality(glaring, { aboutPx: null, tape }).glareShare ?? 0;
  expect(share).toBeGreaterThan(0.22);
  expect(share).toBeLessThan(0.34);
  expect(pictureQuality(glaring, { aboutPx: null, tape: tape.slice(1) }).glareShare).toBeNull();
});

test('a part of the picture alone is judged, and an even one has no edges to tell by', () => {
  const picture = starPicture();
  const corner = { xPx: -10, yPx: -10, widthPx: 20, heightPx: 20 };
  const { blur, light } = pictureQuality(picture, { aboutPx: corner, tape: [] });
  expect(blur).toBeNull();
  expect(light.burntShare + light.darkShare).toBe(0);
});
