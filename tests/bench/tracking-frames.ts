/** Luma planes of a clip's frames as its file has them, by ffmpeg. A frame's values are its own. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Gray } from '../../src/vision/gray.ts';

export async function* lumaFrames(
  file: string,
  widthPx: number,
  heightPx: number,
): AsyncGenerator<{ readonly index: number; readonly gray: Gray }> {
  const frameBytes = (widthPx * heightPx * 3) / 2;
  const ffmpeg = spawn(
    'ffmpeg',
    [
      '-v',
      'error',
      '-threads',
      '1',
      '-i',
      file,
      '-vsync',
      'passthrough',
      '-f',
      'rawvideo',
      '-pix_fmt',
      'yuv420p',
      '-',
    ],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let values = Buffer.allocUnsafe(frameBytes);
  let filled = 0;
  let index = 0;
  for await (const chunk of ffmpeg.stdout as AsyncIterable<Buffer>) {
    for (let at = 0; at < chunk.length; ) {
      const taken = Math.min(chunk.length - at, frameBytes - filled);
      chunk.copy(values, filled, at, at + taken);
      filled += taken;
      at += taken;
      if (filled < frameBytes) continue;
      yield { index, gray: { widthPx, heightPx, values: values.subarray(0, widthPx * heightPx) } };
      index += 1;
      filled = 0;
      values = Buffer.allocUnsafe(frameBytes);
    }
  }
  if (ffmpeg.exitCode === null) await once(ffmpeg, 'close');
  if (ffmpeg.exitCode !== 0) throw new Error(`${file}: ffmpeg ended with ${ffmpeg.exitCode}`);
}
