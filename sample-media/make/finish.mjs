// @ts-check
/**
 * From a clean render to what a phone would have kept: soft lens, falling light to the corners, sensor noise, tone.
 *
 * Model    linear light -> Gaussian blur -> exposure, vignette -> tone curve -> grey and colour noise -> 8 bit.
 * Assumes  nothing here moves a point: the blur is symmetric and no pixel is resampled.
 */
import { randomFrom } from './vectors.mjs';

/**
 * @typedef {{ widthPx: number, heightPx: number, rgb: Uint8Array }} Picture
 * @typedef {{ blurPx: number, exposure: number, vignette: number, greyNoise: number, colourNoise: number, seed: number }} Look
 */

/** @param {Buffer} ppm 16 bit, sRGB @param {import('./camera.mjs').Lens} lens @param {Look} look @returns {Picture} */
export function finish(ppm, lens, look) {
  const { widthPx, heightPx } = lens;
  const start = ppm.length - widthPx * heightPx * 6;
  const toLinear = Float32Array.from({ length: 65536 }, (_, i) => linear(i / 65535));
  const count = widthPx * heightPx;
  const light = [0, 1, 2].map((c) => {
    const plane = new Float32Array(count);
    for (let i = 0, at = start + 2 * c; i < count; i += 1, at += 6)
      plane[i] = toLinear[(ppm[at] << 8) | ppm[at + 1]];
    return blurred(plane, widthPx, heightPx, look.blurPx);
  });
  const rgb = new Uint8Array(count * 3);
  const grain = normals(look.seed);
  const colour = [0, 1].map((c) =>
    blurred(Float32Array.from({ length: count }, normals(look.seed + 17 + c)), widthPx, heightPx, 1.3),
  );
  const [cx, cy] = lens.principalPx;
  const corner = (widthPx / 2) ** 2 + (heightPx / 2) ** 2;
  const curve = Float32Array.from({ length: 4097 }, (_, i) => tone(i / 2048));
  for (let y = 0, i = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1, i += 1) {
      const far = ((x + 0.5 - cx) ** 2 + (y + 0.5 - cy) ** 2) / corner;
      const gain = look.exposure * (1 - look.vignette * far + 0.3 * look.vignette * far * far);
      const bright = curve[Math.min(4096, Math.round(light[1][i] * gain * 2048))];
      const noisy = 1.35 - 0.8 * bright;
      const grey = look.greyNoise * noisy * grain();
      const red = look.colourNoise * noisy * colour[0][i] * 3;
      const blue = look.colourNoise * noisy * colour[1][i] * 3;
      const add = [grey + red, grey - 0.3 * (red + blue), grey + blue];
      for (let c = 0; c < 3; c += 1) {
        const v = curve[Math.min(4096, Math.round(light[c][i] * gain * 2048))] * 255 + add[c];
        rgb[3 * i + c] = v < 0 ? 0 : v > 255 ? 255 : Math.round(v);
      }
    }
  }
  return { widthPx, heightPx, rgb };
}

/** @param {number} v */
const linear = (v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

/** Soft shoulder instead of hard clipping, lifted shadows as phones do. @param {number} v */
function tone(v) {
  const shoulder = v < 0.6 ? v : 0.6 + 0.4 * (1 - Math.exp(-(v - 0.6) / 0.4));
  const s = shoulder <= 0.0031308 ? 12.92 * shoulder : 1.055 * shoulder ** (1 / 2.4) - 0.055;
  return 0.012 + 0.988 * (s + 0.05 * Math.sin(2 * Math.PI * (s - 0.5)) * 0.6);
}

/** @param {number} seed @returns {() => number} */
function normals(seed) {
  const random = randomFrom(seed);
  const table = Float32Array.from(
    { length: 65536 },
    () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
  );
  let state = (seed * 2654435761) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return table[(state >>> 8) & 65535];
  };
}

/** @param {Float32Array} plane @param {number} w @param {number} h @param {number} sigma */
function blurred(plane, w, h, sigma) {
  const reach = Math.ceil(3 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((a, b) => a + b, 0);
  const rows = new Float32Array(plane.length);
  const out = new Float32Array(plane.length);
  for (let y = 0; y < h; y += 1) {
    for (let x = 0; x < w; x += 1) {
      let total = 0;
      for (let k = -reach; k <= reach; k += 1)
        total += weights[k + reach] * plane[y * w + Math.min(w - 1, Math.max(0, x + k))];
      rows[y * w + x] = total / sum;
    }
  }
  for (let y = 0; y < h; y += 1) {
    for (let k = -reach; k <= reach; k += 1) {
      const from = Math.min(h - 1, Math.max(0, y + k)) * w;
      const weight = weights[k + reach] / sum;
      for (let x = 0; x < w; x += 1) out[y * w + x] += weight * rows[from + x];
    }
  }
  return out;
}
