/** A part of a rendered picture, spoiled by a known amount in linear light: blurred, smeared, under- or overexposed, glared on. */
import { drawFrom } from '../../src/basics/random.ts';
import type { Picture } from '../../src/vision/picture-quality.ts';
import type { Point } from '../../src/vision/point.ts';

export type Spoil = {
  readonly blurPx?: number;
  readonly smear?: { readonly lengthPx: number; readonly alongRad: number };
  readonly exposure?: number;
  /** Light added along a line, in a band of its own half width, full in its middle. */
  readonly glare?: { readonly from: Point; readonly to: Point; readonly halfWidthPx: number };
};

const NOISE = 1.5;
const TO_LINEAR = Float64Array.from({ length: 256 }, (_, level) => {
  const v = level / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
});
const encoded = (v: number) => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
const ENCODED = Float64Array.from({ length: 4097 }, (_, i) => 255 * encoded(i / 4096));

export function spoiled(
  picture: Picture,
  { blurPx, smear, exposure = 1, glare }: Spoil,
  seed: number,
): Picture {
  const { widthPx, heightPx, rgba } = picture;
  const draw = drawFrom(seed);
  const changed = rgba.slice();
  const isBlurred = blurPx !== undefined || smear !== undefined;
  for (let c = 0; c < 3; c++) {
    let light = Float32Array.from(
      { length: widthPx * heightPx },
      (_, i) => TO_LINEAR[rgba[4 * i + c] as number] as number,
    );
    if (smear) light = smeared(light, widthPx, heightPx, smear);
    if (blurPx) light = blurred(light, widthPx, heightPx, blurPx);
    for (let i = 0; i < light.length; i++) {
      const added = glare ? glareAt([i % widthPx, Math.floor(i / widthPx)], glare) : 0;
      const value = Math.min(1, exposure * (light[i] as number) + added);
      const level = ENCODED[Math.round(4096 * value)] as number;
      // What blur took away of the noise comes again with the sensor.
      changed[4 * i + c] = isBlurred || exposure < 1 ? level + draw.normal(0, NOISE) : level;
    }
  }
  return { widthPx, heightPx, rgba: changed };
}

function glareAt([x, y]: Point, { from, to, halfWidthPx }: NonNullable<Spoil['glare']>): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const s = ((x - from[0]) * dx + (y - from[1]) * dy) / length;
  const t = ((x - from[0]) * -dy + (y - from[1]) * dx) / length;
  return s >= 0 && s <= length && Math.abs(t) < halfWidthPx ? 1 : 0;
}

function blurred(light: Float32Array, w: number, h: number, sigma: number): Float32Array<ArrayBuffer> {
  const reach = Math.ceil(3.5 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma ** 2)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const along = (from: Float32Array, stride: number, size: number, placeOf: (i: number) => number) =>
    Float32Array.from({ length: w * h }, (_, i) => {
      const place = placeOf(i);
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const there = Math.min(size - 1, Math.max(0, place + k));
        sum += (weights[k + reach] as number) * (from[i + (there - place) * stride] as number);
      }
      return sum / total;
    });
  return along(
    along(light, 1, w, (i) => i % w),
    w,
    h,
    (i) => Math.floor(i / w),
  );
}

function smeared(
  light: Float32Array,
  w: number,
  h: number,
  { lengthPx, alongRad }: NonNullable<Spoil['smear']>,
): Float32Array<ArrayBuffer> {
  const steps = Math.ceil(1.5 * lengthPx);
  const [c, s] = [Math.cos(alongRad), Math.sin(alongRad)];
  return Float32Array.from({ length: w * h }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < steps; k++) {
      const off = ((k + 0.5) / steps - 0.5) * lengthPx;
      const u = Math.min(w - 1.001, Math.max(0, (i % w) + off * c));
      const v = Math.min(h - 1.001, Math.max(0, Math.floor(i / w) + off * s));
      const [left, top] = [Math.floor(u), Math.floor(v)];
      const at = top * w + left;
      const [a, b] = [light[at] as number, light[at + 1] as number];
      const [d, e] = [light[at + w] as number, light[at + w + 1] as number];
      sum += a + (u - left) * (b - a) + (v - top) * (d - a + (u - left) * (a - b - d + e));
    }
    return sum / steps;
  });
}
