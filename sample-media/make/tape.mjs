// @ts-check
/**
 * A steel tape: where it is held, its graduations in the chamber frame, its printed face and its solid.
 *
 * Model    blade point = zero + s along + w across + h normal; the graduated edge next to the rod is w = 0, h = 0.
 * Assumes  the printed (hollow) side looks at the camera. Where the chamber frame's z points towards it (`fromZ` 1), the chamber
 *          stands on the picture's right and the figures are upside down; the edge next to the rod is then w = the blade's width.
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { add, cross, radians, scale } from './vectors.mjs';

const inchMm = 25.4;
const widthMm = 19.05;
const hollowMm = 1.9;
const printInches = 14;
const dotsPerInch = 512;
export const bladeInches = 12;

/**
 * `zero` is of the edge next to the rod; `fromZ` is the side of the camera, -1 where it is not said.
 * @typedef {import('./vectors.mjs').Vec3} Vec3
 * @typedef {{ zero: Vec3, inPlaneDeg: number, outOfPlaneDeg: number, twistDeg: number, fromZ?: 1 | -1 }} Hold
 */

/** `corner` is where w = 0 begins. @param {Hold} hold @returns {{ along: Vec3, across: Vec3, normal: Vec3, corner: Vec3 }} */
export function tapeAxes({ zero, inPlaneDeg, outOfPlaneDeg, twistDeg, fromZ = -1 }) {
  const [a, b, c] = [inPlaneDeg, outOfPlaneDeg, twistDeg].map(radians);
  /** @type {Vec3} */
  const along = [Math.cos(a) * Math.cos(b), Math.sin(a) * Math.cos(b), fromZ * Math.sin(b)];
  /** @type {Vec3} */
  const flat = [-fromZ * Math.sin(a), fromZ * Math.cos(a), 0];
  const towards = cross(along, flat);
  const across = add(scale(flat, Math.cos(c)), scale(towards, Math.sin(c)));
  const corner = fromZ === 1 ? add(zero, scale(across, -widthMm)) : zero;
  return { along, across, normal: cross(along, across), corner };
}

/** @param {Hold} hold @returns {{ inches: number, mm: Vec3 }[]} */
export function graduations(hold) {
  const { along } = tapeAxes(hold);
  const list = [];
  for (let quarter = 1; quarter < bladeInches * 4; quarter += 1) {
    list.push({ inches: quarter / 4, mm: add(hold.zero, scale(along, (quarter / 4) * inchMm)) });
  }
  return list;
}

/** The printed face: lines centred on their value, 1/2, 1/4, 1/8 and 1/16 in of falling length, on both edges. @param {string} file */
export function printFace(file) {
  const w = printInches * dotsPerInch;
  const h = Math.round((widthMm / inchMm) * dotsPerInch);
  const marks = [];
  for (let k = 0; k <= printInches * 16; k += 1) {
    const long = k % 16 === 0 ? h : k % 8 === 0 ? 148 : k % 4 === 0 ? 112 : k % 2 === 0 ? 84 : 54;
    const half = k % 16 === 0 ? 5 : 4;
    const x = k * 32 - half;
    if (k % 16 === 0) marks.push(`<rect x="${x}" y="0" width="${2 * half}" height="${h}"/>`);
    else
      marks.push(
        `<rect x="${x}" y="0" width="${2 * half}" height="${Math.round(long * 0.8)}"/><rect x="${x}" y="${h - long}" width="${2 * half}" height="${long}"/>`,
      );
    if (k % 16 === 0 && k > 0) {
      marks.push(
        `<text x="${k * 32 - 18}" y="${h / 2 + 62}" font-size="180" text-anchor="end">${k / 16}</text>`,
      );
    }
  }
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}"><rect width="${w}" height="${h}" fill="#e3b91c"/><g fill="#15130f" font-family="DejaVu Sans Condensed" font-weight="bold">${marks.join('')}</g></svg>`;
  writeFileSync(`${file}.svg`, svg);
  execFileSync('convert', [`${file}.svg`, file]);
}

/** @param {Hold} hold @param {string} faceFile */
export function tapeSolid(hold, faceFile) {
  const { along, across, normal, corner } = tapeAxes(hold);
  const end = bladeInches * inchMm + 12;
  const strips = 20;
  const at = (/** @type {number} */ x, /** @type {number} */ i) => {
    const q = (2 * i) / strips - 1;
    return `<${x}, ${((i / strips) * widthMm).toFixed(5)}, ${(hollowMm * (q * q - 1)).toFixed(5)}>, <0, ${((-4 * hollowMm * q) / widthMm).toFixed(5)}, 1>`;
  };
  const triangles = [];
  for (let i = 0; i < strips; i += 1) {
    triangles.push(
      `smooth_triangle { ${at(0.6, i)}, ${at(end, i)}, ${at(end, i + 1)} } smooth_triangle { ${at(0.6, i)}, ${at(end, i + 1)}, ${at(0.6, i + 1)} }`,
    );
  }
  const caseX = bladeInches * inchMm;
  return `
union {
  mesh { ${triangles.join('\n')}
    texture { pigment { image_map { png "${faceFile}" map_type 0 once } scale <${printInches * inchMm}, ${widthMm}, 1> } finish { F_Blade } }
    texture { T_TapeDirt } }
  union {
    box { <0, 2.2, -11>, <1.1, ${widthMm - 2.2}, 0.3> }
    box { <0, 4, -0.4>, <15, ${widthMm - 4}, -1.1> translate -0.9*z }
    sphere { 0, 1 scale <2.1, 2.1, 0.8> translate <6, 6.6, -1.3> } sphere { 0, 1 scale <2.1, 2.1, 0.8> translate <11, 12.4, -1.3> }
    texture { T_TapeHook } }
  union {
    superellipsoid { <0.22, 0.3> scale <35, 36, 17> translate <${caseX + 35}, 31, -8> texture { T_TapeCase } }
    superellipsoid { <0.3, 0.5> scale <27, 27, 1.5> translate <${caseX + 36}, 33, 9> texture { T_TapePad } }
    cylinder { <${caseX + 36}, 33, 9>, <${caseX + 36}, 33, 11.2>, 17 texture { T_TapeCase } }
    box { <${caseX - 5}, -3, -5>, <${caseX + 6}, 23, -2.6> texture { T_TapePad } }
  }
  matrix <${[...along, ...across, ...normal, ...corner].map((n) => n.toFixed(9)).join(', ')}>
}

`;
}
