// @ts-check
/** Makes one set: node make.mjs SET SCRATCH_FOLDER; pictures and truth.json go to ../SET. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cameraAt } from './camera.mjs';
import { makeClip } from './clip.mjs';
import { finish } from './finish.mjs';
import { writePhoto } from './photo.mjs';
import { render } from './render.mjs';
import { picture, world } from './scene.mjs';
import { sets } from './sets.mjs';
import { sight } from './sight.mjs';
import { printFace } from './tape.mjs';
import { allPoints, cameraTruth, setTruth } from './truth.mjs';

/** @param {import('./sets.mjs').MediaSet} set @param {string} scratch @param {string} out */
async function makePair(set, scratch, out) {
  const face = join(scratch, 'tape-face.png');
  const called = set.name.replaceAll('/', '-');
  const views = [];
  for (const state of /** @type {const} */ (['released', 'pulled', 'applied'])) {
    const shot = set[state];
    if (!shot) continue;
    const { stand, hold, takenAt } = shot;
    const strokeMm = { released: 0, pulled: set.freeStrokeMm ?? 0, applied: set.strokeMm }[state];
    const camera = cameraAt(stand, set, set.lens);
    const solids = world(set, strokeMm, hold, face, { bar: state === 'pulled' });
    const points = await sight(
      scratch,
      `${called}-${state}`,
      solids,
      camera,
      allPoints(set, camera, strokeMm, hold),
    );
    const raw = await render(scratch, `${called}-${state}`, picture(set, camera, solids), set.lens, {
      closely: around(points, set.lens),
      depth: set.depth ?? 3,
    });
    const look = {
      blurPx: 0.75,
      exposure: set.exposure ?? 1.5,
      vignette: 0.42,
      greyNoise: 2.1,
      colourNoise: 1.2,
      seed: set.seed + { released: 0, pulled: 25, applied: 50 }[state],
    };
    writePhoto(finish(readFileSync(raw), set.lens, look), scratch, join(out, `${state}.jpg`), set.lens, {
      takenAt,
      quality: set.jpegQuality ?? 88,
    });
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
