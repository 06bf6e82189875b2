/** A kept picture as the page sees it: luma of the decoded JPEG, or the gray file itself. */
import { execFileSync } from 'node:child_process';
import { type Gray, grayOf } from '../../src/vision/gray.ts';
import type { Picture } from '../../src/vision/picture-quality.ts';

export function grayOfFile(file: string): Gray {
  const { rgba, widthPx, heightPx } = rgbaOfFile(file);
  return grayOf(rgba, widthPx, heightPx);
}

export function rgbaOfFile(file: string): Picture {
  const plain = ['-background', 'white', '-alpha', 'remove', '+set', 'comment', '-depth', '8', 'ppm:-'];
  const ppm = execFileSync('convert', [file, ...plain], { maxBuffer: 1 << 27 });
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error(`${file} is not as expected`);
  const [widthPx, heightPx] = [Number(head[1]), Number(head[2])];
  const rgb = ppm.subarray(head[0].length);
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let i = 0; i < widthPx * heightPx; i++)
    for (let c = 0; c < 3; c++) rgba[4 * i + c] = rgb[3 * i + c] ?? 0;
  return { rgba, widthPx, heightPx };
}
