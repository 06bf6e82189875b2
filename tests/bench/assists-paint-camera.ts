/**
 * From linear light to the picture a camera stores: blur, exposure, white balance with its error, colour, noise, tone curve,
 * and coding with halved colour.
 *
 * Source  sRGB curve: IEC 61966-2-1; luma and colour differences: ITU-R BT.601-7 as JFIF takes them (both from memory).
 */
import { jpegLoss } from '../vision/jpeg-loss.ts';
import type { SceneDraw } from './assists-paint-draws.ts';
import type { Box } from './assists-paint-render.ts';

type Planes = readonly [Float32Array, Float32Array, Float32Array];

export function cameraPicture(scene: SceneDraw, light: Float32Array, box: Box): Uint8ClampedArray {
  const { camera, draw } = scene;
  const planes = [0, 1, 2].map((i) =>
    smeared(
      blurred(
        light.filter((_, at) => at % 3 === i),
        box,
        camera.blurPx,
      ),
      box,
      camera.smearPx,
    ),
  ) as unknown as Planes;
  const gain = camera.level / middleOf(planes[1]);
  const { tint } = scene.light;
  const gains = [0, 1, 2].map(
    (i) =>
      gain *
      ((tint[i] ?? 1) / tint[1]) ** -camera.balanced *
      Math.exp(([1, 0, -1][i] as number) * camera.tint),
  );
  const stored = [0, 1, 2].map(() => new Float32Array(planes[0].length));
  for (let at = 0; at < planes[0].length; at += 1) {
    const rgb = [0, 1, 2].map((i) => {
      const value = (planes[i]?.[at] ?? 0) * (gains[i] as number);
      return value + draw.normal(0, 1) * camera.noise * Math.sqrt(Math.max(value, 0.002)) * 0.5;
    });
    const gray = 0.3 * (rgb[0] as number) + 0.59 * (rgb[1] as number) + 0.11 * (rgb[2] as number);
    rgb.forEach((value, i) => {
      (stored[i] as Float32Array)[at] = 255 * toned(gray + camera.saturation * (value - gray));
    });
  }
  return coded(stored as unknown as Planes, box, camera.quality);
}

const toned = (linear: number) => {
  const x = Math.max(0, linear);
  const soft = x < 0.7 ? x : 0.7 + 0.3 * (1 - Math.exp(-(x - 0.7) / 0.3));
  return soft <= 0.0031308 ? 12.92 * soft : 1.055 * soft ** (1 / 2.4) - 0.055;
};

function middleOf(values: Float32Array): number {
  const sorted = Float32Array.from(values).sort();
  return Math.max(1e-4, sorted[Math.floor(sorted.length * 0.6)] ?? 0);
}

function blurred(values: Float32Array, box: Box, sigma: number): Float32Array {
  const reach = Math.ceil(3 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-0.5 * ((i - reach) / sigma) ** 2),
  );
  return along(along(values, box, weights, 1, 0), box, weights, 0, 1);
}

/** The hand moved while the shutter was open. */
function smeared(values: Float32Array, box: Box, lengthPx: number): Float32Array {
  return lengthPx < 1
    ? values
    : along(
        values,
        box,
        Array.from({ length: 2 * Math.round(lengthPx / 2) + 1 }, () => 1),
        1,
        1,
      );
}

function along(
  values: Float32Array,
  box: Box,
  weights: readonly number[],
  dx: number,
  dy: number,
): Float32Array {
  const [w, h] = [box.widthPx, box.heightPx];
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const half = (weights.length - 1) / 2;
  return values.map((_, at) => {
    const [x, y] = [at % w, Math.floor(at / w)];
    let sum = 0;
    for (let i = 0; i < weights.length; i += 1) {
      const [cx, cy] = [
        Math.min(w - 1, Math.max(0, x + dx * (i - half))),
        Math.min(h - 1, Math.max(0, y + dy * (i - half))),
      ];
      sum += (weights[i] as number) * (values[cy * w + cx] ?? 0);
    }
    return sum / total;
  });
}

function coded(rgb: Planes, box: Box, quality: number): Uint8ClampedArray {
  const [w, h] = [box.widthPx, box.heightPx];
  const [hw, hh] = [Math.ceil(w / 2), Math.ceil(h / 2)];
  const luma = Uint8ClampedArray.from(
    rgb[0],
    (r, at) => 0.299 * r + 0.587 * (rgb[1][at] ?? 0) + 0.114 * (rgb[2][at] ?? 0),
  );
  const halved = (of: (at: number) => number) =>
    Uint8ClampedArray.from({ length: hw * hh }, (_, to) => {
      const [x, y] = [2 * (to % hw), 2 * Math.floor(to / hw)];
      const [x1, y1] = [Math.min(w - 1, x + 1), Math.min(h - 1, y + 1)];
      return 128 + (of(y * w + x) + of(y * w + x1) + of(y1 * w + x) + of(y1 * w + x1)) / 4;
    });
  const blue = halved((at) => ((rgb[2][at] ?? 0) - (luma[at] ?? 0)) * 0.564);
  const red = halved((at) => ((rgb[0][at] ?? 0) - (luma[at] ?? 0)) * 0.713);
  const bytes = (values: Uint8ClampedArray) => new Uint8Array(values.buffer);
  const y8 = jpegLoss(bytes(luma), w, h, quality);
  const b8 = jpegLoss(bytes(blue), hw, hh, Math.max(50, quality - 12));
  const r8 = jpegLoss(bytes(red), hw, hh, Math.max(50, quality - 12));
  const rgba = new Uint8ClampedArray(4 * w * h).fill(255);
  for (let at = 0; at < w * h; at += 1) {
    const half = Math.floor(Math.floor(at / w) / 2) * hw + Math.floor((at % w) / 2);
    const [y, cb, cr] = [y8[at] ?? 0, (b8[half] ?? 0) - 128, (r8[half] ?? 0) - 128];
    rgba[4 * at] = y + 1.402 * cr;
    rgba[4 * at + 1] = y - 0.344 * cb - 0.714 * cr;
    rgba[4 * at + 2] = y + 1.772 * cb;
  }
  return rgba;
}
