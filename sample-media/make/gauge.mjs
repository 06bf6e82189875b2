// @ts-check
/** Makes the photo of the reservoir gauge, an own dial without a maker: node gauge.mjs SCRATCH_FOLDER; it goes to ../inspection. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cameraAt, povCamera } from './camera.mjs';
import { finish } from './finish.mjs';
import { materials } from './materials.mjs';
import { hexNut } from './parts-chamber.mjs';
import { writePhoto } from './photo.mjs';
import { render } from './render.mjs';
import { radians } from './vectors.mjs';

const shownPsi = 95;
const fullPsi = 150;
const dialRadiusMm = 46;

/** @type {import('./camera.mjs').Lens} */
const lens = { widthPx: 1600, heightPx: 1200, focalPx: 1199, principalPx: [802.1, 598.4] };
const side = { nearZ: /** @type {const} */ (-1), downY: /** @type {const} */ (1) };
const stand = {
  aim: /** @type {[number, number, number]} */ ([6, 4, 0]),
  distanceMm: 235,
  yawDeg: 9,
  liftDeg: 7,
  rollDeg: 3.2,
};

/** Clockwise from straight up; the scale goes over three quarters of the dial. @param {number} psi */
const turnRad = (psi) => radians(-135 + (270 * psi) / fullPsi);

/** @param {string} file */
function printDial(file) {
  const at = (/** @type {number} */ psi, /** @type {number} */ r) => [
    500 + r * Math.sin(turnRad(psi)),
    500 - r * Math.cos(turnRad(psi)),
  ];
  const parts = [];
  for (let psi = 0; psi <= fullPsi; psi += 5) {
    const [long, wide] = psi % 30 === 0 ? [78, 11] : psi % 10 === 0 ? [56, 7] : [36, 4];
    const [[x1, y1], [x2, y2]] = [at(psi, 440), at(psi, 440 - long)];
    parts.push(`<path d="M${x1} ${y1}L${x2} ${y2}" stroke="#1b1a18" stroke-width="${wide}"/>`);
    if (psi % 30 !== 0) continue;
    const [x, y] = at(psi, 300);
    parts.push(`<text x="${x}" y="${y + 28}" font-size="82" text-anchor="middle">${psi}</text>`);
  }
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="1000" height="1000"><rect width="1000" height="1000" fill="#ded9c8"/><g fill="#1b1a18" font-family="DejaVu Sans Condensed" font-weight="bold">${parts.join('')}<text x="500" y="700" font-size="66" text-anchor="middle">psi</text><text x="500" y="792" font-size="46" text-anchor="middle">AIR</text></g></svg>`;
  writeFileSync(`${file}.svg`, svg);
  execFileSync('convert', [`${file}.svg`, file]);
}

/** @param {string} dialFile */
function gaugeScene(dialFile) {
  const camera = cameraAt(stand, side, lens);
  const [c, s] = [Math.cos(turnRad(shownPsi)), Math.sin(turnRad(shownPsi))];
  const r = dialRadiusMm;
  const bolt = (/** @type {number} */ x, /** @type {number} */ y) =>
    `object { HexNut scale <6, 8, 8> rotate y*90 translate <${x}, ${y}, 6> }`;
  return `#version 3.7;
global_settings { assumed_gamma 1.0 max_trace_level 6 }
background { rgb <0.80, 0.85, 0.90> }
${materials(1)} ${hexNut()}
/* dial, needle, rim */
cylinder { <0, 0, 0>, <0, 0, 4>, ${r} texture { pigment { image_map { png "${dialFile}" once } translate <-0.5, -0.5, 0> scale <${2 * r}, ${-2 * r}, 1> } finish { F_Dull } } texture { Dust scale 0.4 } }
union {
  prism { linear_sweep linear_spline -0.4, 0.4, 5, <-2.6, 12>, <2.6, 12>, <0.5, -36>, <-0.5, -36>, <-2.6, 12> matrix <1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, -2.4> }
  cylinder { <0, 0, 0>, <0, 0, -4.4>, 5.2 }
  matrix <${c}, ${s}, 0, ${-s}, ${c}, 0, 0, 0, 1, 0, 0, 0>
  pigment { rgb <0.035, 0.03, 0.03> } finish { F_Paint } }
union {
  difference { cylinder { <0, 0, -9>, <0, 0, 22>, ${r + 6} } cylinder { <0, 0, -10>, <0, 0, 0.1>, ${r - 0.5} } }
  torus { ${r + 2.8}, 3.2 rotate x*90 translate -9*z }
  texture { T_NewCast } texture { Splash scale 0.3 } }
/* the panel it sits in, its screws, a pipe */
difference { box { <-130, -92, 10>, <140, 96, 16> } cylinder { <0, 0, 0>, <0, 0, 30>, ${r + 6} } texture { T_Plate scale 0.6 } }
${bolt(-88, -66)} ${bolt(98, -66)} ${bolt(-88, 70)} ${bolt(98, 70)}
sphere_sweep { cubic_spline 5, <176, -60, 40>, 7, <172, 0, 34>, 7, <170, 90, 30>, 7, <150, 220, 36>, 7, <140, 320, 40>, 7 tolerance 0.01 texture { T_Hose } }
box { <-900, -700, 120>, <900, 700, 130> texture { T_Axle } }
light_source { <420, -560, -520> rgb <1.25, 1.18, 1.06> area_light 260*x, 260*y, 4, 4 adaptive 0 jitter circular orient }
light_source { <-500, -200, -900> rgb <0.42, 0.46, 0.52> shadowless }
${povCamera(camera)}
`;
}

const [, , scratch] = process.argv;
if (!scratch) throw new Error('usage: node gauge.mjs SCRATCH_FOLDER');
const out = join(dirname(fileURLToPath(import.meta.url)), '..', 'inspection');
for (const folder of [scratch, out]) mkdirSync(folder, { recursive: true });
const dial = join(scratch, 'dial.png');
printDial(dial);
const raw = await render(scratch, 'gauge', gaugeScene(dial), lens, { smooth: ['+A0.1', '+AM2', '+R2'] });
const look = { blurPx: 0.75, exposure: 1.4, vignette: 0.4, greyNoise: 2.1, colourNoise: 1.2, seed: 2199 };
const photo = finish(readFileSync(raw), lens, look);
writePhoto(photo, scratch, join(out, 'gauge.jpg'), lens, { takenAt: '2026:05:12 09:25:12', quality: 80 });
rmSync(raw);
