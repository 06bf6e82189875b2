/** A picture made smaller by a whole number: each new pixel the mean of a square of old ones. Coarse things are looked for in it. */
import type { Gray } from './gray.ts';

export type Shrunk = { readonly gray: Gray; readonly by: number };

export function shrunk({ widthPx, heightPx, values }: Gray, mostPx: number): Shrunk {
  const by = Math.max(1, Math.ceil(Math.max(widthPx, heightPx) / mostPx));
  const [width, height] = [Math.floor(widthPx / by), Math.floor(heightPx / by)];
  const small = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let j = 0; j < by; j++) {
        const row = (y * by + j) * widthPx + x * by;
        for (let i = 0; i < by; i++) sum += values[row + i] as number;
      }
      small[y * width + x] = Math.round(sum / (by * by));
    }
  return { gray: { widthPx: width, heightPx: height, values: small }, by };
}
