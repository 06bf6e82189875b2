// @ts-check
/** Which points of a ray-traced scene can be seen from where the camera stands, and where they are in the picture. */
import { cameraAt, project } from '../../sample-media/make/camera.mjs';
import { rodAxisPoint, stateAt } from '../../sample-media/make/mechanism.mjs';
import { clampBandPoint } from '../../sample-media/make/parts-chamber.mjs';
import { clevisBackMm } from '../../sample-media/make/parts-linkage.mjs';
import { sightLines } from '../../sample-media/make/render.mjs';
import { graduations } from '../../sample-media/make/tape.mjs';
import { markPoints } from '../../sample-media/make/truth.mjs';
import { degrees } from '../../sample-media/make/vectors.mjs';
import { cardCorners } from './accuracy-render-card.mjs';
import { STATES } from './accuracy-render-draws.mjs';

/**
 * @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3
 * @typedef {import('../../sample-media/make/sets.mjs').MediaSet} MediaSet
 * @typedef {import('./accuracy-render-draws.mjs').Hold} Hold
 * @typedef {{ declarations: string, solids: string[] }} Solids
 */

/** A point is seen where the line of sight meets the solids there, or in the bottom of a centre mark. */
const SEEN_MM = 0.6;
const CENTRE_MARK_MM = 2.6;
/** A fixed thing is marked somewhere on it: a nut, a corner. */
const THING_MM = 12;

/** @param {MediaSet} set @param {Solids[]} scenes @param {Hold[]} holds @param {string} folder */
export async function bothSeen(set, scenes, holds, folder) {
  const views = [];
  for (const [i, state] of STATES.entries()) {
    const view = await seenPoints(set, state, scenes[i], holds[i], folder);
    if (!view) return null;
    views.push(view);
  }
  return views;
}

/** @param {MediaSet} set @param {'released' | 'applied'} state @param {Solids} scene @param {Hold} hold @param {string} folder */
async function seenPoints(set, state, scene, { card, tape }, folder) {
  const camera = cameraAt(set[state].stand, set, set.lens);
  const strokeMm = state === 'applied' ? set.strokeMm : 0;
  const { widthPx, heightPx } = set.lens;
  const inside = (/** @type {readonly number[]} */ [u, v]) =>
    u > 12 && v > 12 && u < widthPx - 12 && v < heightPx - 12;
  const points = markPoints(set, camera, strokeMm);
  const main = [points.chamberFace, points.clevisPin, points.camshaftEnd];
  const corners = card ? cardCorners(card).map((c) => ({ ...c, px: project(camera, c.mm) })) : [];
  if (![...main, ...corners].every(({ px }) => inside(px))) return null;
  const rim = Array.from({ length: 72 }, (_v, i) => clampBandPoint((i * Math.PI) / 36, set.nearZ));
  const marks = tape ? graduations(tape).map(({ inches, mm }) => ({ inches, mm })) : [];
  const things = fixedThings(set);
  const within = (/** @type {Vec3} */ [x, y, z]) => /** @type {Vec3} */ ([x, y - 0.3, z]);
  const asked = [
    ...main.map(({ mm }) => mm),
    ...rim,
    ...marks.map(({ mm }) => within(mm)),
    ...things,
    ...corners.map(({ mm }) => mm),
  ];
  const sights = await sightLines(folder, set.name, scene, camera.eye, asked);
  const misses = sights.map(({ pointMm, hitMm }) => hitMm - pointMm);
  const mainSeen = main.every((_p, i) => misses[i] > -SEEN_MM && misses[i] < CENTRE_MARK_MM);
  if (!mainSeen) return null;
  let at = main.length;
  const taken = (/** @type {number} */ count) => {
    at += count;
    return misses.slice(at - count, at);
  };
  const seenRim = kept(rim, taken(rim.length)).filter((mm) => inside(project(camera, mm)));
  const seenMarks = kept(marks, taken(marks.length)).filter(({ mm }) => inside(project(camera, mm)));
  const thingMisses = taken(things.length);
  const cornersHidden = taken(corners.length).filter((miss) => miss < -SEEN_MM).length;
  if (seenRim.length < 10 || (tape && seenMarks.length < 12) || cornersHidden > 0) return null;
  const pin = stateAt(set.wheelEnd, strokeMm).pin;
  const rod = [0.25, 0.75].map((share) =>
    rodAxisPoint(stateAt(set.wheelEnd, strokeMm), share * (pin[0] - clevisBackMm)),
  );
  const px = (/** @type {Vec3} */ mm) => project(camera, mm);
  return {
    camera,
    offSquareDeg: degrees(Math.acos(Math.abs(camera.forward[2]))),
    chamberFace: px(points.chamberFace.mm),
    clevisPin: px(points.clevisPin.mm),
    camshaftEnd: px(points.camshaftEnd.mm),
    rodLine: rod.map(px),
    clampBand: evenly(seenRim, 20).map(px),
    tapeGraduations: seenMarks.map(({ inches, mm }) => ({ inches, px: px(mm) })),
    targetCorners: corners.map(({ marker, corner, px: at }) => ({ marker, corner, px: at })),
    fixedThings: things.flatMap((mm, i) =>
      Math.abs(thingMisses[i]) < THING_MM && inside(px(mm)) ? [{ name: String(i), px: px(mm) }] : [],
    ),
  };
}

/** Things that stand still, in the chamber frame, near side by nearZ. @param {MediaSet} set */
function fixedThings(set) {
  const [cx, cy] = set.wheelEnd.camshaftMm;
  const lug = (set.lugTurnDeg * Math.PI) / 180;
  const bolt = (/** @type {number} */ turn) => [
    -63.2,
    116 * Math.cos(turn) - -30 * Math.sin(turn),
    116 * Math.sin(turn) + -30 * Math.cos(turn),
  ];
  const nuts = [0.5, 2.1, 3.9, 5.4].map((a) => [cx + 44 * Math.cos(a), cy + 44 * Math.sin(a), 38]);
  const drawn = [
    [37.6, 60.3, 0],
    [37.6, -60.3, 0],
    [0.05, -86, -27],
    [9.5, -86, -27],
    [9.5, 86, -27],
    bolt(lug),
    bolt(lug + Math.PI),
    ...nuts,
    [-54, -102.5, 0],
  ];
  return drawn.map(([x, y, z]) => /** @type {Vec3} */ ([x, y, -set.nearZ * z]));
}

/** @template T @param {readonly T[]} list @param {readonly number[]} misses */
function kept(list, misses) {
  return list.filter((_p, i) => Math.abs(misses[i]) < SEEN_MM);
}

/** @template T @param {readonly T[]} list @param {number} count */
function evenly(list, count) {
  if (list.length <= count) return [...list];
  return Array.from({ length: count }, (_v, i) => list[Math.round((i * (list.length - 1)) / (count - 1))]);
}
