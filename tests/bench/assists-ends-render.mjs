// @ts-check
/**
 * node assists-ends-render.mjs NUMBER FOLDER: the ends of pin and camshaft of one drawn wheel end, released and applied, ray traced: cut from
 * pictures of 1920 x 1080, as FOLDER/ends-NUMBER-STATE-KIND.jpg, with their truth in FOLDER/ends-NUMBER.json. Seeds are fixed.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cameraAt, project } from '../../sample-media/make/camera.mjs';
import { finish } from '../../sample-media/make/finish.mjs';
import { materials } from '../../sample-media/make/materials.mjs';
import { facePoint, stateAt } from '../../sample-media/make/mechanism.mjs';
import { hexNut } from '../../sample-media/make/parts-chamber.mjs';
import { render } from '../../sample-media/make/render.mjs';
import { picture } from '../../sample-media/make/scene.mjs';
import { add, scale } from '../../sample-media/make/vectors.mjs';
import { again, drawSet, drawStand, drawsFrom } from './accuracy-render-draws.mjs';
import { behind, drawPin, drawShaft, pinSolid, shaftSolid, tipMm } from './assists-ends-scene.mjs';

/** @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3 */

/** Half of what is cut out, over the length from face to pin. */
const HALF = { 'clevis-pin': 0.19, 'camshaft-end': 0.34 };

/** @param {number} number @param {string} folder */
async function make(number, folder) {
  const draw = drawsFrom(90_000 + number);
  const { set: drawn } = drawSet(0, draw);
  const set = { ...drawn, name: `ends-${number}`, nearZ: /** @type {-1} */ (-1) };
  const pin = drawPin(draw);
  const shaft = drawShaft(draw);
  const back = behind(draw);
  const near = draw.uniform(0.62, 1);
  const light = draw.uniform(0.6, 2);
  const first = { ...drawStand(draw) };
  first.distanceMm *= near;
  const second = again(first, draw);
  set.released = { ...set.released, stand: first };
  const shots = [];
  for (const state of /** @type {const} */ (['released', 'applied'])) {
    const stand = state === 'released' ? first : second;
    const camera = cameraAt(stand, set, set.lens);
    const at = stateAt(set.wheelEnd, state === 'released' ? 0 : set.strokeMm);
    const [cx, cy] = set.wheelEnd.camshaftMm;
    const places = {
      'clevis-pin': /** @type {Vec3} */ ([at.pin[0], at.pin[1], -tipMm(pin)]),
      'camshaft-end': /** @type {Vec3} */ ([cx, cy, -tipMm(shaft)]),
    };
    const facePx = project(camera, facePoint(at, camera.eye));
    const pinPx = project(camera, places['clevis-pin']);
    const lengthPx = Math.hypot(pinPx[0] - facePx[0], pinPx[1] - facePx[1]);
    const scene = {
      declarations: materials(set.downY) + hexNut(),
      solids: [pinSolid(at, pin), shaftSolid(at, set.wheelEnd, shaft), back],
    };
    const look = {
      blurPx: draw.uniform(0.5, 1.5),
      exposure: light * draw.uniform(0.85, 1.15),
      greyNoise: draw.uniform(1, 4.5),
    };
    const quality = Math.round(draw.uniform(72, 94));
    for (const kind of /** @type {const} */ (['clevis-pin', 'camshaft-end'])) {
      const [x, y] = project(camera, places[kind]);
      const half = HALF[kind] * lengthPx;
      const left = 16 * Math.floor((x - half) / 16);
      const top = 16 * Math.floor((y - half) / 16);
      const side = 16 * Math.ceil((2 * half + 16) / 16);
      const [px, py] = set.lens.principalPx;
      const lens = {
        ...set.lens,
        widthPx: side,
        heightPx: side,
        principalPx: /** @type {[number, number]} */ ([px - left, py - top]),
      };
      const name = `ends-${number}-${state}-${kind}`;
      const raw = await render(
        folder,
        name,
        picture(set, { ...camera, lens }, scene, { plain: number % 3 !== 0 }),
        lens,
        { smooth: ['+A0.1', '+AM2', '+R3'] },
      );
      // The lens falls off about its own middle: the cut has none.
      const { rgb } = finish(readFileSync(raw), lens, {
        ...look,
        vignette: 0,
        colourNoise: look.greyNoise / 2,
        seed: 70_000 + 10 * number + shots.length,
      });
      writeFileSync(raw, Buffer.concat([Buffer.from(`P6\n${side} ${side}\n255\n`), rgb]));
      const file = join(folder, `${name}.jpg`);
      execFileSync('convert', [raw, '-quality', String(quality), '-sampling-factor', '4:2:0', file]);
      rmSync(raw);
      rmSync(join(folder, `${name}.pov`), { force: true });
      const inwards = project(camera, add(places[kind], scale([0, 0, 1], 1)));
      shots.push({
        state,
        kind,
        file: `${name}.jpg`,
        placePx: [x - left, y - top],
        lengthPx,
        /** Marks of the whole picture. */
        marksPx: { face: facePx, pin: pinPx, camshaft: project(camera, places['camshaft-end']) },
        /** How the axis runs inwards there, over a millimetre across the line of sight. */
        inwardsPx: [inwards[0] - x, inwards[1] - y],
        radiusMm: (kind === 'clevis-pin' ? pin : shaft).end.radius,
        pxPerMm: pxPerMm(camera, places[kind]),
      });
    }
  }
  writeFileSync(
    join(folder, `${set.name}.json`),
    `${JSON.stringify({ number, pin: brief(pin), shaft: brief(shaft), strokeMm: set.strokeMm, shots })}\n`,
  );
}

/** @param {import('./assists-ends-scene.mjs').Pin | import('./assists-ends-scene.mjs').Shaft} part */
function brief({ end, ...part }) {
  return { end, kind: 'isHead' in part ? (part.isHead ? 'head' : part.fastener) : part.kind };
}

/** Across the line of sight. @param {import('../../sample-media/make/camera.mjs').Camera} camera @param {Vec3} mm */
function pxPerMm(camera, mm) {
  const at = project(camera, mm);
  const by = project(camera, add(mm, camera.right));
  return Math.hypot(by[0] - at[0], by[1] - at[1]);
}

const [, , number, folder] = process.argv;
if (!number || !folder) throw new Error('usage: node assists-ends-render.mjs NUMBER FOLDER');
await make(Number(number), folder);
