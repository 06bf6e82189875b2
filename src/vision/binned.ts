/** A gray picture in squares of pixels, each as bright as their mean; what is left over at the right and below is dropped. */
import type { Gray } from './gray.ts';

export function binned({ widthPx, heightPx, values }: Gray, sidePx: number): Gray {
  const [columns, rows] = [Math.floor(widthPx / sidePx), Math.floor(heightPx / sidePx)];
  const means = new Uint8Array(columns * rows);
  for (let row = 0, at = 0; row < rows; row++)
    for (let column = 0; column < columns; column++, at++) {
      let sum = 0;
      for (let j = 0, from = row * sidePx * widthPx + column * sidePx; j < sidePx; j++, from += widthPx)
        for (let i = 0; i < sidePx; i++) sum += values[from + i] as number;
      means[at] = Math.round(sum / (sidePx * sidePx));
    }
  return { widthPx: columns, heightPx: rows, values: means };
}
