// @ts-check
/** A finished picture as a phone would have kept it: JPEG with its EXIF. */
import { execFileSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** @param {import('./finish.mjs').Picture} photo @param {string} scratch @param {string} file @param {import('./camera.mjs').Lens} lens @param {{ takenAt: string, quality: number }} how */
export function writePhoto({ widthPx, heightPx, rgb }, scratch, file, lens, { takenAt, quality }) {
  const ppm = join(scratch, 'finished.ppm');
  writeFileSync(ppm, Buffer.concat([Buffer.from(`P6\n${widthPx} ${heightPx}\n255\n`), rgb]));
  execFileSync('convert', [ppm, '-quality', String(quality), '-sampling-factor', '4:2:0', file]);
  rmSync(ppm);
  const focal35 = Math.round((lens.focalPx * 43.267) / Math.hypot(widthPx, heightPx));
  execFileSync('exiftool', [
    '-q',
    '-overwrite_original',
    '-Orientation#=1',
    '-ColorSpace#=1',
    `-FocalLengthIn35mmFormat=${focal35}`,
    '-FocalLength=5.7',
    '-FNumber=1.8',
    '-ISO=250',
    '-ExposureTime=1/60',
    `-DateTimeOriginal=${takenAt}`,
    `-CreateDate=${takenAt}`,
    '-ImageDescription=invented scene, rendered',
    file,
  ]);
}
