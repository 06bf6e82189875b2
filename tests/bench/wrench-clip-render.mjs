// @ts-check
/**
 * A clip of a wrench on an adjuster's hex over five applications, rendered with truth: node wrench-clip-render.mjs SCRATCH_FOLDER; it goes
 * to tests/fixtures/wrench. The wheel end is the sample media's; the camera stands on the ground before the wheel end and looks at
 * the hex. With a number behind the folder only that frame is rendered, to look at.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { povCamera, project } from '../../sample-media/make/camera.mjs';
import { materials } from '../../sample-media/make/materials.mjs';
import { stateAt } from '../../sample-media/make/mechanism.mjs';
import { chamberSolid, hexNut } from '../../sample-media/make/parts-chamber.mjs';
import { armSolid, camshaftEndMm, pinEnd, rodSolid } from '../../sample-media/make/parts-linkage.mjs';
import { render } from '../../sample-media/make/render.mjs';
import { add, cross, radians, subtract, unit } from '../../sample-media/make/vectors.mjs';

/** @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3 */

const framesPerSecond = 15;
const strokeMm = 43;
const stepsDeg = [11, 9, 8, 7, 6];
/** Seconds of each application and of the rest before it. */
const lasting = { rest: 0.8, out: 0.35, held: 0.5, back: 0.35 };
const each = lasting.rest + lasting.out + lasting.held + lasting.back;
const frameCount = Math.round((stepsDeg.length * each + lasting.rest) * framesPerSecond);
const wheelEnd = {
  camshaftMm: /** @type {[number, number]} */ ([171.4, 136.9]),
  armLengthMm: 139.7,
  releasedPinXmm: 131.2,
  innerEndBehindFaceMm: 85,
};
/** Marked where its groove ends: all about that spot is wrench. */
const wrench = { lengthMm: 170, markedMm: 136, beginDeg: -150 };
/** In the arm's frame: the end of the hex, its axis is -y. */
const hexEnd = /** @type {Vec3} */ ([-31, -45, 0]);
const lens = {
  widthPx: 960,
  heightPx: 540,
  focalPx: 800,
  principalPx: /** @type {[number, number]} */ ([480, 270]),
};

/** @param {number} u */
const eased = (u) => {
  const t = Math.min(1, Math.max(0, u));
  return t * t * t * (10 - 15 * t + 6 * t * t);
};

/** @param {number} timeS */
function momentAt(timeS) {
  const n = Math.min(stepsDeg.length, Math.floor(timeS / each));
  const t = n < stepsDeg.length ? timeS - n * each - lasting.rest : -1;
  const out = eased(t / lasting.out);
  const back = eased((t - lasting.out - lasting.held) / lasting.back);
  const done = stepsDeg.slice(0, n).reduce((sum, step) => sum + step, 0);
  // Taken up while the brake is let go.
  return { applied: out - back, turnDeg: done + (stepsDeg[n] ?? 0) * back };
}

/** @param {number} applied */
const stateOf = (applied) => stateAt(wheelEnd, strokeMm * applied);

/** From the arm's frame. @param {import('../../sample-media/make/mechanism.mjs').State} state @param {Vec3} p @returns {Vec3} */
function inChamber({ armRad }, [x, y, z]) {
  const [c, s] = [Math.cos(armRad), Math.sin(armRad)];
  return [wheelEnd.camshaftMm[0] + c * x - s * y, wheelEnd.camshaftMm[1] + s * x + c * y, z];
}

/** @param {number} turnDeg @param {number} reachMm @returns {Vec3} */
function onWrench(turnDeg, reachMm) {
  const a = radians(wrench.beginDeg + turnDeg);
  // On the face of the bar.
  return [hexEnd[0] + reachMm * Math.cos(a), hexEnd[1] + 0.5, hexEnd[2] + reachMm * Math.sin(a)];
}

/** @param {import('../../sample-media/make/mechanism.mjs').State} state @param {number} turnDeg */
function wrenchSolid(state, turnDeg) {
  const [c, s] = [Math.cos(state.armRad), Math.sin(state.armRad)];
  const L = wrench.lengthMm;
  return `union {
    difference {
      union {
        cylinder { <0, 0, 0>, <0, 9, 0>, 13 }
        box { <8, 1.5, -8>, <${L}, 7.5, 8> }
        cylinder { <${L}, 1, 0>, <${L}, 8, 0>, 13 }
      }
      cylinder { <${L}, -1, 0>, <${L}, 10, 0>, 6.5 }
      box { <35, -1, -3.5>, <${L - 35}, 2.6, 3.5> }
    }
    texture { T_Machined scale 2.5 }
    rotate y*${-(wrench.beginDeg + turnDeg)}
    translate <${hexEnd[0]}, ${hexEnd[1] - 1}, ${hexEnd[2]}>
    matrix <${c}, ${s}, 0, ${-s}, ${c}, 0, 0, 0, 1, ${wheelEnd.camshaftMm[0]}, ${wheelEnd.camshaftMm[1]}, 0>
  }`;
}

function camera() {
  const hex = inChamber(stateOf(0), hexEnd);
  const eye = /** @type {Vec3} */ ([hex[0] - 540, hex[1] + 150, hex[2] - 260]);
  const aim = add(hex, [20, -22, 0]);
  const forward = unit(subtract(aim, eye));
  const right = unit(cross([0, 1, 0], forward));
  return { eye, right, down: cross(forward, right), forward, lens };
}

/** @param {number} applied @param {number} turnDeg */
function sceneText(applied, turnDeg) {
  const state = stateOf(applied);
  return `#version 3.7;
global_settings { assumed_gamma 1.0 max_trace_level 4 }
background { rgb <0.5, 0.53, 0.56> }
${materials(1)}${hexNut()}
${chamberSolid({ rodAtFaceYmm: 0, lugTurnDeg: 14, downY: 1 })}
${rodSolid(state, { pinSide: 'cotter', overStrokeFromPinMm: 180, overStrokeLengthMm: 10 })}
${armSolid(state, wheelEnd, { isNew: false })}
${wrenchSolid(state, turnDeg)}
/* what stands still behind: a frame rail, a cross member, the axle */
box { <420, -420, -500>, <440, 120, 700> texture { T_Plate } }
box { <380, 40, -600>, <400, 130, 800> texture { T_Band scale 3 } }
cylinder { <330, 330, -600>, <330, 330, 800>, 62 texture { T_Axle } }
box { <300, 150, 120>, <330, 420, 300> texture { T_Cast scale 2 } }
box { <900, -900, -1500>, <910, 900, 1500> texture { T_Gravel } }
light_source { <-900, -700, -1300> rgb 1.7 }
light_source { <-1400, 900, 600> rgb 0.9 shadowless }
${povCamera(camera())}
`;
}

/** @param {number} applied @param {number} turnDeg */
function placesOf(applied, turnDeg) {
  const state = stateOf(applied);
  const seen = (/** @type {Vec3} */ p) => project(camera(), p).map((v) => Math.round(v * 1000) / 1000);
  const hex = inChamber(state, [hexEnd[0], hexEnd[1] - 1, hexEnd[2]]);
  return {
    centre: seen(hex),
    tip: seen(inChamber(state, onWrench(turnDeg, wrench.markedMm))),
    pin: seen([state.pin[0], state.pin[1], -pinEnd.cotter]),
    camshaft: seen([...wheelEnd.camshaftMm, -camshaftEndMm]),
  };
}

const [, , scratch, only] = process.argv;
if (!scratch) throw new Error('usage: node wrench-clip-render.mjs SCRATCH_FOLDER [FRAME]');
mkdirSync(scratch, { recursive: true });
const moments = Array.from({ length: frameCount }, (_, index) => ({
  index,
  ...momentAt(index / framesPerSecond),
}));
const fileOf = (/** @type {number} */ index) => join(scratch, `wrench-${String(index).padStart(3, '0')}.ppm`);
for (const { index, applied, turnDeg } of only
  ? moments.filter(({ index }) => `${index}` === only)
  : moments) {
  if (existsSync(fileOf(index))) continue;
  // At rest nothing moves: rendered once.
  const same = moments.find(
    (other) => other.applied === applied && other.turnDeg === turnDeg && existsSync(fileOf(other.index)),
  );
  if (same) {
    writeFileSync(fileOf(index), readFileSync(fileOf(same.index)));
    continue;
  }
  const raw = await render(scratch, 'wrench', sceneText(applied, turnDeg), lens, {
    smooth: ['+A0.3', '+AM2', '+R1'],
  });
  renameSync(raw, fileOf(index));
}
if (only) {
  console.log(
    JSON.stringify(placesOf(moments[Number(only)]?.applied ?? 0, moments[Number(only)]?.turnDeg ?? 0)),
  );
  process.exit(0);
}

const file = join(dirname(fileURLToPath(import.meta.url)), '..', 'fixtures', 'wrench');
mkdirSync(file, { recursive: true });
execFileSync('ffmpeg', [
  ...['-y', '-v', 'error', '-framerate', `${framesPerSecond}`, '-i', join(scratch, 'wrench-%03d.ppm')],
  // As a phone would have it: a little soft, a little noise, brighter than rendered.
  ...[
    '-vf',
    'eq=gamma=1.25,gblur=sigma=0.55,noise=alls=4:allf=t:all_seed=77,scale=out_color_matrix=bt709:out_range=tv',
  ],
  ...['-c:v', 'libx264', '-preset', 'medium', '-crf', '25', '-bf', '2', '-g', '30', '-pix_fmt', 'yuv420p'],
  ...['-color_primaries', 'bt709', '-color_trc', 'bt709', '-colorspace', 'bt709', '-color_range', 'tv'],
  ...[
    '-an',
    '-movflags',
    '+faststart',
    '-metadata',
    'title=invented scene, rendered',
    join(file, 'wrench.mp4'),
  ],
]);
const frames = moments.map(({ index, applied, turnDeg }) => ({
  index,
  timeS: Math.round((1e6 * index) / framesPerSecond) / 1e6,
  applied: Math.round(applied * 1e4) / 1e4,
  turnDeg: Math.round(turnDeg * 1e4) / 1e4,
  ...placesOf(applied, turnDeg),
}));
const truth = {
  title: 'A wrench that turns, five applications; invented scene, rendered',
  ...lens,
  framesPerSecond,
  stepsDeg,
  frames,
};
writeFileSync(join(file, 'truth.json'), `${JSON.stringify(truth, null, 1)}\n`);
