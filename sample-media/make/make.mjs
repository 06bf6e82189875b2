// @ts-check
/** Makes one set: node make.mjs SET SCRATCH_FOLDER; pictures and truth.json go to ../SET. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cameraAt } from './camera.mjs';
import { makeClip } from './clip.mjs';
import { finish } from './finish.mjs';
import { render } from './render.mjs';
import { picture, world } from './scene.mjs';
import { sets } from './sets.mjs';
import { sight } from './sight.mjs';
import { printFace } from './tape.mjs';
import { allPoints, cameraTruth, setTruth } from './truth.mjs';

/** @param {import('./sets.mjs').MediaSet} set @param {string} scratch @param {string} out */
async function makePair(set, scratch, out) {
  const face = join(scratch, 'tape-face.png');
  const views = [];
  for (const state of /** @type {const} */ (['released', 'applied'])) {
    const { stand, hold, takenAt } = set[state];
    const strokeMm = state === 'applied' ? set.strokeMm : 0;
    const camera = cameraAt(stand, set, set.lens);
    const solids = world(set, strokeMm, hold, face);
    const points = await sight(
      scratch,
      `${set.name}-${state}`,
      solids,
      camera,
      allPoints(set, camera, strokeMm, hold),
    );
    const raw = await render(scratch, `${set.name}-${state}`, picture(set, camera, solids), set.lens, {
      closely: around(points, set.lens),
    });
    const look = {
      blurPx: 0.75,
      exposure: 1.5,
      vignette: 0.42,
      greyNoise: 2.1,
      colourNoise: 1.2,
      seed: set.seed + (state === 'applied' ? 50 : 0),
    };
    writePhoto(
      finish(readFileSync(raw), set.lens, look),
      scratch,
      join(out, `${state}.jpg`),
      set.lens,
      takenAt,
    );
    rmSync(raw);
    views.push({ state, file: `${state}.jpg`, ...cameraTruth(camera), points });
  }
  return { ...setTruth(set), views };
}

/** The part of the picture where marks go. @param {import('./truth.mjs').Points} points @param {import('./camera.mjs').Lens} lens @returns {[number, number, number, number]} */
function around({ chamberFace, clevisPin, camshaftEnd, tapeGraduations = [] }, { widthPx, heightPx }) {
  const px = [chamberFace, clevisPin, camshaftEnd, ...tapeGraduations].map((point) => point.px);
  const [us, vs] = [px.map(([u]) => u), px.map(([, v]) => v)];
  const margin = 0.03 * widthPx;
  return [
    Math.max(1, Math.round(Math.min(...us) - margin)),
    Math.max(1, Math.round(Math.min(...vs) - margin)),
    Math.min(widthPx, Math.round(Math.max(...us) + margin)),
    Math.min(heightPx, Math.round(Math.max(...vs) + margin)),
  ];
}

/** @param {import('./finish.mjs').Picture} photo @param {string} scratch @param {string} file @param {import('./camera.mjs').Lens} lens @param {string} takenAt */
function writePhoto({ widthPx, heightPx, rgb }, scratch, file, lens, takenAt) {
  const ppm = join(scratch, 'finished.ppm');
  writeFileSync(ppm, Buffer.concat([Buffer.from(`P6\n${widthPx} ${heightPx}\n255\n`), rgb]));
  execFileSync('convert', [ppm, '-quality', '88', '-sampling-factor', '4:2:0', file]);
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

const [, , name, scratch] = process.argv;
const set = sets.find((one) => one.name === name);
if (!set || !scratch)
  throw new Error(`usage: node make.mjs ${sets.map((one) => one.name).join('|')} SCRATCH_FOLDER`);
const out = join(dirname(fileURLToPath(import.meta.url)), '..', set.name);
mkdirSync(out, { recursive: true });
mkdirSync(scratch, { recursive: true });
printFace(join(scratch, 'tape-face.png'));
const truth = set.kind === 'pair' ? await makePair(set, scratch, out) : await makeClip(set, scratch, out);
writeFileSync(join(out, 'truth.json'), `${JSON.stringify(truth, null, 1)}\n`);
