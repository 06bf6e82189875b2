// @ts-check
/**
 * node assists-marks-render.mjs NUMBER FOLDER: one ray-traced picture of a wheel end of a drawn look, with its truth; seeds are fixed.
 *
 * The scene is that of sample-media/make; what it is made of, its light, its lens, its tape's colour and its weather are drawn.
 * Three of four have a tape in view. Truth: FOLDER/look-NUMBER.json, null where all marks are seen from no place that is tried; picture: FOLDER/look-NUMBER.jpg.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cameraAt, project } from '../../sample-media/make/camera.mjs';
import { finish } from '../../sample-media/make/finish.mjs';
import { rodAxisPoint, rodRadiusMm, stateAt } from '../../sample-media/make/mechanism.mjs';
import { clampBandPoint } from '../../sample-media/make/parts-chamber.mjs';
import { clevisBackMm } from '../../sample-media/make/parts-linkage.mjs';
import { render, sightLines } from '../../sample-media/make/render.mjs';
import { picture, world } from '../../sample-media/make/scene.mjs';
import { graduations, printFace, tapeAxes } from '../../sample-media/make/tape.mjs';
import { markPoints } from '../../sample-media/make/truth.mjs';
import { add, degrees, scale } from '../../sample-media/make/vectors.mjs';
import { drawSet, drawStand, drawsFrom } from './accuracy-render-draws.mjs';

/**
 * @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3
 * @typedef {import('../../sample-media/make/sets.mjs').MediaSet} MediaSet
 * @typedef {import('./accuracy-render-draws.mjs').Draws} Draws
 * @typedef {ReturnType<typeof world>} Scene
 */

/** A point is seen where the line of sight meets the solids there, or in the bottom of a centre mark. */
const SEEN_MM = 0.6;
const CENTRE_MARK_MM = 2.6;
/** That the camera is tried at. */
const MOST_PLACES = 60;

/** What the ends of pin and camshaft are made of: bright, as bolts, as cast, painted over. */
const MACHINED = ['T_Machined', 'T_Bolt', 'T_Cast', 'T_Rim'];
const BAND = ['T_Band', 'T_Band', 'T_Bolt', 'T_Housing', 'T_Rim'];
const HOUSING = ['T_Housing', 'T_Cast', 'T_Plate'];
const BLADE = ['#e3b91c', '#e3b91c', '#d9d6c8', '#f0d24a', '#c8cdd0'];

const TURNED = [
  'T_Machined',
  'T_Bolt',
  'T_Cast',
  'T_Rod',
  'T_Band',
  'T_Housing',
  'T_Plate',
  'T_TapeDirt',
  'T_Grease',
];

/** The same stuff, other places of it, some of it another stuff. @param {string} declarations @param {Draws} draw */
function otherLook(declarations, draw) {
  const turned = TURNED.map((name) => {
    const by = [0, 1, 2].map(() => draw.uniform(-500, 500).toFixed(2)).join(', ');
    return `#declare ${name} = texture { ${name} translate <${by}> }`;
  });
  const swapped = [
    ['T_Machined', draw.oneOf(MACHINED)],
    ['T_Band', draw.oneOf(BAND)],
    ['T_Housing', draw.oneOf(HOUSING)],
  ].map(([name, by]) => (name === by ? '' : `#declare ${name} = texture { ${by} }`));
  return [declarations, ...turned, ...swapped].join('\n');
}

/** @param {string} file @param {Draws} draw */
function printBlade(file, draw) {
  printFace(file);
  const colour = draw.oneOf(BLADE);
  writeFileSync(`${file}.svg`, readFileSync(`${file}.svg`, 'utf8').replace('#e3b91c', colour));
  execFileSync('convert', [`${file}.svg`, file]);
}

/** @param {number} number @param {string} folder */
async function makePicture(number, folder) {
  const draw = drawsFrom(40_000 + number);
  const withTape = number % 4 !== 3;
  // Its number says there whether a tape is held; the tape of the sample media has its print towards negative z.
  const { set: drawn } = drawSet(withTape ? 1 : number % 8 === 3 ? 3 : 0, draw);
  const name = `look-${number}`;
  const strokeMm = draw.uniform(0, 1) < 0.5 ? 0 : drawn.strokeMm;
  const tape = withTape
    ? {
        zero: /** @type {Vec3} */ ([draw.uniform(0.2, 1.2), draw.uniform(-22, -12), draw.uniform(-30, -20)]),
        inPlaneDeg: draw.normal(0, 2.5),
        outOfPlaneDeg: draw.normal(0, 2.5),
        twistDeg: draw.normal(0, 5),
      }
    : undefined;
  const face = join(folder, `${name}-face.png`);
  if (tape) printBlade(face, draw);
  const made = world(drawn, strokeMm, tape, face);
  const scene = { declarations: otherLook(made.declarations, draw), solids: made.solids };
  for (let tried = 0; tried < MOST_PLACES; tried += 1) {
    const stand = drawStand(draw);
    const set = { ...drawn, name, released: { ...drawn.released, stand } };
    const seen = await seenPoints(set, strokeMm, scene, tape, folder);
    if (seen) return takePicture(set, scene, seen, { draw, folder, number });
  }
  console.log(`${name} is passed over: from none of ${MOST_PLACES} places are all marks seen`);
  keepTruth(folder, name, null);
}

/** Null where there is no picture. @param {string} folder @param {string} name @param {object | null} truth */
function keepTruth(folder, name, truth) {
  for (const ending of ['.pov', '-sight.pov', '-sight.txt', '-face.png', '-face.png.svg'])
    rmSync(join(folder, `${name}${ending}`), { force: true });
  writeFileSync(join(folder, `${name}.json`), `${JSON.stringify(truth)}\n`);
}

/** @param {MediaSet} set @param {number} strokeMm @param {Scene} scene @param {import('../../sample-media/make/tape.mjs').Hold | undefined} tape @param {string} folder */
async function seenPoints(set, strokeMm, scene, tape, folder) {
  const camera = cameraAt(set.released.stand, set, set.lens);
  const { widthPx, heightPx } = set.lens;
  const px = (/** @type {Vec3} */ mm) => project(camera, mm);
  const inside = (/** @type {Vec3} */ mm) => {
    const [u, v] = px(mm);
    return u > 12 && v > 12 && u < widthPx - 12 && v < heightPx - 12;
  };
  const points = markPoints(set, camera, strokeMm);
  const main = [points.chamberFace, points.clevisPin, points.camshaftEnd].map(({ mm }) => mm);
  if (!main.every(inside)) return null;
  const rim = Array.from({ length: 120 }, (_v, i) => clampBandPoint((i * Math.PI) / 60, set.nearZ));
  const marks = tape ? graduations(tape).map(({ inches, mm }) => ({ inches, mm })) : [];
  const within = (/** @type {Vec3} */ [x, y, z]) => /** @type {Vec3} */ ([x, y - 0.3, z]);
  const asked = [...main, ...rim, ...marks.map(({ mm }) => within(mm))];
  const sights = await sightLines(folder, set.name, scene, camera.eye, asked);
  const misses = sights.map(({ pointMm, hitMm }) => hitMm - pointMm);
  if (!main.every((_p, i) => misses[i] > -SEEN_MM && misses[i] < CENTRE_MARK_MM)) return null;
  const rimMisses = misses.slice(main.length, main.length + rim.length);
  const markMisses = misses.slice(main.length + rim.length);
  const seenRim = rim.filter((mm, i) => Math.abs(rimMisses[i]) < SEEN_MM && inside(mm));
  const seenMarks = marks.filter(({ mm }, i) => Math.abs(markMisses[i]) < SEEN_MM && inside(mm));
  if (seenRim.length < 20 || (tape && seenMarks.length < 16)) return null;
  const state = stateAt(set.wheelEnd, strokeMm);
  const rod = [0.2, 0.5, 0.8].map((share) => rodAxisPoint(state, share * (state.pin[0] - clevisBackMm)));
  return {
    camera,
    offSquareDeg: degrees(Math.acos(Math.abs(camera.forward[2]))),
    chamberFace: px(points.chamberFace.mm),
    clevisPin: px(points.clevisPin.mm),
    camshaftEnd: px(points.camshaftEnd.mm),
    rodLine: rod.map(px),
    /** Half the rod's width, in pixels, at its middle. */
    rodHalfPx: Math.hypot(
      ...[0, 1].map((i) => px(add(rod[1], scale([0, 1, 0], rodRadiusMm)))[i] - px(rod[1])[i]),
    ),
    rim: rim.map(px),
    rimSeen: seenRim.map(px),
    tapeGraduations: seenMarks.map(({ inches, mm }) => ({
      inches,
      px: px(mm),
      strokePx: tape ? strokeLine(tape, mm).map(px) : [],
    })),
  };
}

/** A graduation's middle line over the hollow blade, from the edge inwards. @param {import('../../sample-media/make/tape.mjs').Hold} tape @param {Vec3} edge */
function strokeLine(tape, edge) {
  const { across, normal } = tapeAxes(tape);
  return [0, 1, 2, 3, 4, 5, 6].map((w) => {
    const q = (2 * w) / 19.05 - 1;
    return add(add(edge, scale(across, w)), scale(normal, 1.9 * (q * q - 1)));
  });
}

/**
 * @param {MediaSet} set @param {Scene} scene @param {NonNullable<Awaited<ReturnType<typeof seenPoints>>>} seen
 * @param {{ draw: Draws, folder: string, number: number }} more
 */
async function takePicture(set, scene, seen, { draw, folder, number }) {
  const { camera, ...points } = seen;
  const px = [
    points.clevisPin,
    points.camshaftEnd,
    ...points.rimSeen,
    ...points.tapeGraduations.map((g) => g.px),
  ];
  const file = join(folder, `${set.name}.jpg`);
  const look = {
    blurPx: draw.uniform(0.6, 1.3),
    exposure: draw.uniform(0.8, 2),
    greyNoise: draw.uniform(1.5, 4.5),
  };
  if (!existsSync(file)) await shoot(set, camera, scene, { file, folder, look, px, number });
  const { widthPx, heightPx, focalPx } = set.lens;
  const truth = {
    number,
    ...look,
    widthPx,
    heightPx,
    focalPx,
    pinSide: set.pinSide,
    nearZ: set.nearZ,
    ...points,
  };
  keepTruth(folder, set.name, truth);
}

/**
 * @param {MediaSet} set @param {import('../../sample-media/make/camera.mjs').Camera} camera @param {Scene} scene
 * @param {{ file: string, folder: string, look: { blurPx: number, exposure: number, greyNoise: number }, px: (readonly [number, number])[], number: number }} more
 */
async function shoot(set, camera, scene, { file, folder, look, px, number }) {
  const { widthPx, heightPx } = set.lens;
  const [us, vs] = [px.map(([u]) => u), px.map(([, v]) => v)];
  const raw = await render(
    folder,
    set.name,
    picture(set, camera, scene, { plain: number % 10 !== 0 }),
    set.lens,
    {
      smooth: ['-A'],
      closely: [
        Math.max(1, Math.floor(Math.min(...us) - 40)),
        Math.max(1, Math.floor(Math.min(...vs) - 40)),
        Math.min(widthPx, Math.ceil(Math.max(...us) + 40)),
        Math.min(heightPx, Math.ceil(Math.max(...vs) + 40)),
      ],
    },
  );
  const { rgb } = finish(readFileSync(raw), set.lens, {
    ...look,
    vignette: 0.4,
    colourNoise: look.greyNoise / 2,
    seed: 9000 + number,
  });
  writeFileSync(raw, Buffer.concat([Buffer.from(`P6\n${widthPx} ${heightPx}\n255\n`), rgb]));
  execFileSync('convert', [raw, '-quality', '88', '-sampling-factor', '4:2:0', file]);
  rmSync(raw);
}

const [, , number, folder] = process.argv;
if (!number || !folder) throw new Error('usage: node assists-marks-render.mjs NUMBER FOLDER');
await makePicture(Number(number), folder);
