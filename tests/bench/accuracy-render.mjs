// @ts-check
/**
 * node accuracy-render.mjs NUMBER FOLDER [bare]: one pair of ray-traced pictures of a wheel end, with its truth; seeds are fixed.
 * bare: nothing is held before it.
 *
 * The scene is that of sample-media/make, its mechanism and its camera; the printed target is added. Nothing of the engine is
 * used. Truth and marked points: FOLDER/pair-NUMBER.json; pictures: pair-NUMBER-released.jpg, pair-NUMBER-applied.jpg.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { finish } from '../../sample-media/make/finish.mjs';
import { clampBandDiameterMm } from '../../sample-media/make/parts-chamber.mjs';
import { pinEnd } from '../../sample-media/make/parts-linkage.mjs';
import { render } from '../../sample-media/make/render.mjs';
import { picture, world } from '../../sample-media/make/scene.mjs';
import { printFace } from '../../sample-media/make/tape.mjs';
import { setTruth } from '../../sample-media/make/truth.mjs';
import { cardSolid, printCard } from './accuracy-render-card.mjs';
import { again, drawHolds, drawSet, drawStand, drawsFrom, STATES } from './accuracy-render-draws.mjs';
import { bothSeen } from './accuracy-render-sight.mjs';

/**
 * @typedef {import('../../sample-media/make/sets.mjs').MediaSet} MediaSet
 * @typedef {import('./accuracy-render-draws.mjs').Held} Held
 * @typedef {import('./accuracy-render-draws.mjs').Hold} Hold
 * @typedef {import('./accuracy-render-draws.mjs').Draws} Draws
 * @typedef {import('./accuracy-render-sight.mjs').Solids} Solids
 * @typedef {NonNullable<Awaited<ReturnType<typeof bothSeen>>>} SeenViews
 */

/** Pairs in soft light; light without extent spares the others much time. */
const SOFT = [2, 3, 8, 14];

/** @param {number} number @param {string} folder @param {boolean} bare */
async function makePair(number, folder, bare) {
  const draw = drawsFrom(number);
  const { set: drawn, held: drawnHeld } = drawSet(number, draw);
  const held = bare ? 'nothing' : drawnHeld;
  const face = join(folder, 'tape-face.png');
  const print = join(folder, 'card.pgm');
  printFace(face);
  printCard(print);
  const holds = held === 'nothing' ? STATES.map(() => ({})) : drawHolds(held, drawn, draw);
  const dirt = draw.uniform(0, 1);
  const scenes = STATES.map((state, i) => {
    const { card, tape } = holds[i];
    const made = world(drawn, state === 'applied' ? drawn.strokeMm : 0, tape, face);
    const solids = card ? [...made.solids, cardSolid(card, print, { dirt, shift: number })] : made.solids;
    return { declarations: made.declarations, solids };
  });
  // A person stands where the marks can be seen in both pictures.
  for (let tried = 0; tried < 60; tried += 1) {
    const stand = drawStand(draw);
    const set = {
      ...drawn,
      released: { ...drawn.released, stand },
      applied: { ...drawn.applied, stand: again(stand, draw) },
    };
    const seen = await bothSeen(set, scenes, holds, folder);
    if (seen) return takePictures(set, held, scenes, holds, seen, { dirt, draw, folder, tried });
  }
  throw new Error(`${drawn.name}: no place found from which all marks are seen`);
}

/** The part of the picture that is looked at; the rest need not be smooth. @param {SeenViews[number]} points @param {MediaSet['lens']} lens @returns {[number, number, number, number]} */
function around({ clevisPin, chamberFace, tapeGraduations, targetCorners }, { widthPx, heightPx }) {
  const px = [clevisPin, chamberFace, ...tapeGraduations.map((g) => g.px), ...targetCorners.map((c) => c.px)];
  const [us, vs] = [px.map(([u]) => u), px.map(([, v]) => v)];
  return [
    Math.max(1, Math.floor(Math.min(...us) - 30)),
    Math.max(1, Math.floor(Math.min(...vs) - 30)),
    Math.min(widthPx, Math.ceil(Math.max(...us) + 30)),
    Math.min(heightPx, Math.ceil(Math.max(...vs) + 30)),
  ];
}

/**
 * @param {MediaSet} set @param {Held | 'nothing'} held @param {Solids[]} scenes @param {Hold[]} holds
 * @param {SeenViews} seen
 * @param {{ dirt: number, draw: Draws, folder: string, tried: number }} more
 */
async function takePictures(set, held, scenes, holds, seen, { dirt, draw, folder, tried }) {
  const look = {
    blurPx: draw.uniform(0.6, 1.1),
    exposure: draw.uniform(1, 1.8),
    greyNoise: draw.uniform(1.5, 4),
  };
  const number = Number(set.name.slice(5));
  const plain = !SOFT.includes(number);
  const views = [];
  for (const [i, state] of STATES.entries()) {
    const name = `${set.name}-${state}`;
    const raw = await render(folder, name, picture(set, seen[i].camera, scenes[i], { plain }), set.lens, {
      smooth: ['-A'],
      closely: around(seen[i], set.lens),
    });
    const { widthPx, heightPx, rgb } = finish(readFileSync(raw), set.lens, {
      ...look,
      vignette: 0.4,
      colourNoise: look.greyNoise / 2,
      seed: set.seed + i,
    });
    writeFileSync(raw, Buffer.concat([Buffer.from(`P6\n${widthPx} ${heightPx}\n255\n`), rgb]));
    const file = join(folder, `${name}.jpg`);
    execFileSync('convert', [raw, '-quality', '88', '-sampling-factor', '4:2:0', file]);
    rmSync(raw);
    rmSync(join(folder, `${name}.pov`));
    const { camera: _camera, ...points } = seen[i];
    views.push({ state, ...points });
  }
  const { armAngleAppliedDeg, strokeMm } = setTruth(set);
  const [card] = holds.map((hold) => hold.card);
  const truth = {
    number,
    held,
    tried,
    dirt,
    ...look,
    light: plain ? 'hard' : 'soft',
    widthPx: set.lens.widthPx,
    heightPx: set.lens.heightPx,
    focalPx: set.lens.focalPx,
    distanceMm: set.released.stand.distanceMm,
    strokeMm,
    armAngleAppliedDeg,
    armLengthMm: set.wheelEnd.armLengthMm,
    bandDiameterMm: clampBandDiameterMm,
    pinEndMm: pinEnd[set.pinSide],
    printSize: card ? card.size : 1,
    views,
  };
  writeFileSync(join(folder, `${set.name}.json`), `${JSON.stringify(truth, null, 1)}\n`);
}

const [, , number, folder, bare] = process.argv;
if (!number || !folder) throw new Error('usage: node accuracy-render.mjs NUMBER FOLDER [bare]');
await makePair(Number(number), folder, bare === 'bare');
