// @ts-check
/**
 * The printed target as a thing in the ray-traced scene: where it lies, its corners, its print, its solid.
 *
 * Model    point of the card = origin + s (u along + h up), h = -v; front towards the camera's side of the wheel end.
 *          Chamber frame of sample-media/make: x outward, y towards the camshaft, z = x cross y.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { add, cross, radians, scale } from '../../sample-media/make/vectors.mjs';

/**
 * @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3
 * @typedef {{ origin: Vec3, along: Vec3, up: Vec3, front: Vec3, size: number }} Card
 */

const widthMm = 196;
const heightMm = 36;
const thickMm = 1.2;
const dotsPerMm = 10;

const markers = JSON.parse(
  readFileSync(new URL('../../src/references/target-markers.json', import.meta.url), 'utf8'),
).markers;

/** Corners of a marker as printed, u right and v down, mm: six in a row, 24 mm, from 6 mm on every 32 mm, 6 mm above the edge. @param {number} marker */
function printedMm(marker) {
  const [left, right, low, high] = [6 + 32 * marker, 30 + 32 * marker, -6, -30];
  return [
    [left, high],
    [right, high],
    [right, low],
    [left, low],
  ];
}

/**
 * Along the rod on the side away from the camshaft, the lower edge near the pin's centre line.
 * @param {{ nearZ: 1 | -1, pin: Vec3, pinOnCardMm: number, edgeMm: number, standOffMm: number, turnDeg: number, tiltAlongDeg: number, tiltAcrossDeg: number, size: number }} hold
 * standOffMm: from the pin's end out to the card, at the pin
 * @returns {Card}
 */
export function layCard({
  nearZ,
  pin,
  pinOnCardMm,
  edgeMm,
  standOffMm,
  turnDeg,
  tiltAlongDeg,
  tiltAcrossDeg,
  size,
}) {
  /** @type {Vec3} */
  let front = [0, 0, nearZ];
  /** @type {Vec3} */
  let up = [0, -1, 0];
  let along = cross(up, front);
  [along, up] = turned(along, up, radians(turnDeg));
  [front, along] = turned(front, along, radians(tiltAlongDeg));
  [up, front] = turned(up, front, radians(tiltAcrossDeg));
  const beneath = add(pin, scale(front, standOffMm));
  const origin = add(add(beneath, scale(along, -size * pinOnCardMm)), scale(up, edgeMm));
  return { origin, along, up, front, size };
}

/** Distance of a point behind the card's front, mm. @param {Card} card @param {Vec3} p */
export function behindCardMm({ origin, front }, p) {
  return -(front[0] * (p[0] - origin[0]) + front[1] * (p[1] - origin[1]) + front[2] * (p[2] - origin[2]));
}

/** @param {Card} card @returns {{ marker: number, corner: number, mm: Vec3 }[]} */
export function cardCorners({ origin, along, up, size }) {
  return markers.flatMap((/** @type {{ marker: number }} */ { marker }) =>
    printedMm(marker).map(([u, v], corner) => ({
      marker,
      corner,
      mm: add(origin, add(scale(along, size * u), scale(up, -size * v))),
    })),
  );
}

/** A binary graymap, 0.1 mm a dot: cells of 4 mm, outermost black. @param {string} file */
export function printCard(file) {
  const [w, h] = [widthMm * dotsPerMm, heightMm * dotsPerMm];
  const dots = Buffer.alloc(w * h, 255);
  for (const { marker, rows } of markers) {
    const [[left, high]] = printedMm(marker);
    for (let i = 0; i < 6; i += 1)
      for (let j = 0; j < 6; j += 1) {
        const white = rows[i - 1]?.[j - 1] === '1';
        const [x0, y0] = [(left + 4 * j) * dotsPerMm, (heightMm + high + 4 * i) * dotsPerMm];
        for (let y = y0; y < y0 + 40; y += 1) dots.fill(white ? 255 : 0, y * w + x0, y * w + x0 + 40);
      }
  }
  writeFileSync(file, Buffer.concat([Buffer.from(`P5\n${w} ${h}\n255\n`), dots]));
}

/** @param {Card} card @param {string} print @param {{ dirt: number, shift: number }} look dirt: 0 none, 1 a lot */
export function cardSolid({ origin, along, up, front, size }, print, { dirt, shift }) {
  const clear = (1 - 0.75 * dirt).toFixed(3);
  return `
box { <0, 0, ${-thickMm}>, <${widthMm}, ${heightMm}, 0>
  texture { pigment { image_pattern { pgm "${print}" once } color_map { [0 rgb 0.035] [1 rgb <0.78, 0.77, 0.73>] } scale <${widthMm}, ${heightMm}, 1> } finish { ambient 0 diffuse 0.9 specular 0.05 roughness 0.08 } }
  texture { pigment { bozo scale 16 turbulence 0.8 translate ${shift} color_map { [0.45 rgbt <0.2, 0.15, 0.1, 1>] [0.8 rgbt <0.2, 0.15, 0.1, ${clear}>] [1 rgbt <0.1, 0.08, 0.06, ${clear}>] } } finish { ambient 0 diffuse 0.8 } }
  scale <${size}, ${size}, 1>
  matrix <${[...along, ...up, ...front, ...origin].map((n) => n.toFixed(9)).join(', ')}>
}`;
}

/** @param {Vec3} a @param {Vec3} b @param {number} angle @returns {[Vec3, Vec3]} */
function turned(a, b, angle) {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [add(scale(a, c), scale(b, s)), add(scale(b, c), scale(a, -s))];
}
