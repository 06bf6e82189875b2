/** A star of light and dark wedges, blurred and smeared by known amounts in linear light, with noise: edges that face every way. */
import { drawFrom } from '../../src/basics/random.ts';
import type { Picture } from '../../src/vision/picture-quality.ts';

const [WIDTH, HEIGHT, SPOKES, FINE] = [440, 330, 18, 3];
export const LIGHT = { dark: 0.05, bright: 0.5 };

export type Spoiled = {
  readonly blurPx?: number;
  readonly smear?: { readonly lengthPx: number; readonly alongRad: number };
  readonly exposure?: number;
  readonly noise?: number;
};

let star: Float64Array | null = null;

export function starPicture({ blurPx = 0, smear, exposure = 1, noise = 1.5 }: Spoiled = {}): Picture {
  star ??= wedges();
  let light = star;
  if (smear) light = smeared(light, smear.lengthPx, smear.alongRad);
  if (blurPx > 0) light = blurred(blurred(light, blurPx, 1), blurPx, WIDTH);
  const draw = drawFrom(7);
  const rgba = new Uint8ClampedArray(4 * WIDTH * HEIGHT);
  for (const [i, value] of light.entries()) {
    const level = 255 * encoded(Math.min(1, exposure * value));
    const noisy = level + (level < 255 ? draw.normal(0, noise) : 0);
    rgba.set([noisy, noisy, noisy, 255], 4 * i);
  }
  return { widthPx: WIDTH, heightPx: HEIGHT, rgba };
}

export const encoded = (v: number) => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);

function wedges(): Float64Array {
  const light = new Float64Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      let bright = 0;
      for (let j = 0; j < FINE; j++)
        for (let i = 0; i < FINE; i++) {
          const turn = Math.atan2(y + (j + 0.5) / FINE - HEIGHT / 2, x + (i + 0.5) / FINE - WIDTH / 2 + 0.13);
          if (Math.floor((turn / Math.PI) * SPOKES + 100) % 2 === 0) bright++;
        }
      light[y * WIDTH + x] = LIGHT.dark + ((LIGHT.bright - LIGHT.dark) * bright) / FINE ** 2;
    }
  return light;
}

function blurred(light: Float64Array, sigmaPx: number, stride: number): Float64Array {
  const reach = Math.ceil(4 * sigmaPx);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigmaPx ** 2)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const size = stride === 1 ? WIDTH : HEIGHT;
  return light.map((_, at) => {
    const place = stride === 1 ? at % WIDTH : Math.floor(at / WIDTH);
    let sum = 0;
    for (let k = -reach; k <= reach; k++) {
      const there = Math.min(size - 1, Math.max(0, place + k));
      sum += (weights[k + reach] as number) * (light[at + (there - place) * stride] as number);
    }
    return sum / total;
  });
}

function smeared(light: Float64Array, lengthPx: number, alongRad: number): Float64Array {
  const steps = Math.ceil(1.5 * lengthPx);
  return light.map((_, at) => {
    const [x, y] = [at % WIDTH, Math.floor(at / WIDTH)];
    let sum = 0;
    for (let k = 0; k < steps; k++) {
      const s = ((k + 0.5) / steps - 0.5) * lengthPx;
      const [u, v] = [x + s * Math.cos(alongRad), y + s * Math.sin(alongRad)].map((w, i) =>
        Math.min((i === 0 ? WIDTH : HEIGHT) - 1.001, Math.max(0, w)),
      ) as [number, number];
      const [left, top] = [Math.floor(u), Math.floor(v)];
      const [a, b] = [light[top * WIDTH + left] as number, light[top * WIDTH + left + 1] as number];
      const [c, d] = [
        light[(top + 1) * WIDTH + left] as number,
        light[(top + 1) * WIDTH + left + 1] as number,
      ];
      sum += a + (u - left) * (b - a) + (v - top) * (c - a + (u - left) * (a - b - c + d));
    }
    return sum / steps;
  });
}
