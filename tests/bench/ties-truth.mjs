// @ts-check
/**
 * node ties-truth.mjs NAME FOLDER: where places of a ray-traced pair's released picture truly are in its applied one.
 *
 * In: JSON on the standard input, [[[x, y], [x, y]], ...]: a place in each picture. Out: for each the true place in the applied picture,
 * how far (mm) what is there stands off what was seen in the released one (0: it stands still and is seen), how far (px) the given
 * place is off the true epipolar line. NAME: a pair of sample-media, or the number of a pair of accuracy-render.mjs, whose draws are
 * drawn again. Nothing of the engine or of src/vision is used.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cameraAt, chamberFromCamera, project } from '../../sample-media/make/camera.mjs';
import { sightLines } from '../../sample-media/make/render.mjs';
import { world } from '../../sample-media/make/scene.mjs';
import { sets } from '../../sample-media/make/sets.mjs';
import { printFace } from '../../sample-media/make/tape.mjs';
import { cardSolid, printCard } from './accuracy-render-card.mjs';
import { again, drawHolds, drawSet, drawStand, drawsFrom, STATES } from './accuracy-render-draws.mjs';

/**
 * @typedef {import('../../sample-media/make/sets.mjs').MediaSet} MediaSet
 * @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3
 * @typedef {[number, number]} Px
 */

const [, , name = '', folder = ''] = process.argv;
/** @type {[Px, Px][]} */
const places = JSON.parse(readFileSync(0, 'utf8'));
const face = join(folder, 'tape-face.png');
printFace(face);
const { set, scenes } = /^\d+$/.test(name) ? drawnPair(Number(name)) : samplePair(name);
const [one, other] = STATES.map((state) => cameraAt(set[state].stand, set, set.lens));
if (!one || !other || !scenes[0] || !scenes[1]) throw new Error('a pair has two pictures');

const far = places.map(([first]) => onRay(first, 1000));
const hits = await sightLines(folder, `ties-${name}-released`, scenes[0], one.eye, far);
const seen = far.map((point, i) => {
  const share = hits[i].hitMm / hits[i].pointMm;
  return /** @type {Vec3} */ (point.map((value, axis) => one.eye[axis] + share * (value - one.eye[axis])));
});
const sights = await sightLines(folder, `ties-${name}-applied`, scenes[1], other.eye, seen);
const face0 = project(one, [0, 0, 0]);
console.log(
  JSON.stringify({
    /** For a check that the camera is the one of the picture. */
    originPx: face0,
    places: places.map(([first, second], i) => ({
      truePx: project(other, seen[i]),
      offMm: sights[i].hitMm - sights[i].pointMm,
      linePx: offLine(first, second),
    })),
  }),
);

/** @param {Px} px @param {number} depthMm @returns {Vec3} */
function onRay([u, v], depthMm) {
  const { focalPx, principalPx } = set.lens;
  const at = /** @type {Vec3} */ ([
    ((u - principalPx[0]) / focalPx) * depthMm,
    ((v - principalPx[1]) / focalPx) * depthMm,
    depthMm,
  ]);
  return chamberFromCamera(one, at);
}

/** @param {Px} first @param {Px} second */
function offLine(first, second) {
  const [a, b] = [500, 1500].map((depthMm) => project(other, onRay(first, depthMm)));
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return (dx * (second[1] - a[1]) - dy * (second[0] - a[0])) / Math.hypot(dx, dy);
}

/** @param {string} wanted */
function samplePair(wanted) {
  const found = sets.find((each) => each.name === wanted);
  if (!found) throw new Error(`no set ${wanted}`);
  return {
    set: found,
    scenes: STATES.map((state) =>
      world(found, state === 'applied' ? found.strokeMm : 0, found[state].hold, face),
    ),
  };
}

/** In the order of accuracy-render.mjs. @param {number} number */
function drawnPair(number) {
  const { tried } = JSON.parse(readFileSync(join(folder, `pair-${number}.json`), 'utf8'));
  const draw = drawsFrom(number);
  const { set: drawn, held } = drawSet(number, draw);
  const print = join(folder, 'card.pgm');
  printCard(print);
  const holds = drawHolds(held, drawn, draw);
  const dirt = draw.uniform(0, 1);
  const made = STATES.map((state, i) => {
    const { card, tape } = holds[i];
    const scene = world(drawn, state === 'applied' ? drawn.strokeMm : 0, tape, face);
    const solids = card ? [...scene.solids, cardSolid(card, print, { dirt, shift: number })] : scene.solids;
    return { declarations: scene.declarations, solids };
  });
  let [released, applied] = [drawn.released.stand, drawn.applied.stand];
  for (let place = 0; place <= tried; place += 1) {
    released = drawStand(draw);
    applied = again(released, draw);
  }
  return {
    set: /** @type {MediaSet} */ ({
      ...drawn,
      released: { ...drawn.released, stand: released },
      applied: { ...drawn.applied, stand: applied },
    }),
    scenes: made,
  };
}
