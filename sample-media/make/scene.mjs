// @ts-check
import { cameraAt, chamberFromCamera, pov, povCamera } from './camera.mjs';
import { materials } from './materials.mjs';
import { rodAxisPoint, stateAt } from './mechanism.mjs';
import { chamberSolid, hexNut } from './parts-chamber.mjs';
import { gloveSolid } from './parts-glove.mjs';
import { armSolid, barSolid, rodSolid } from './parts-linkage.mjs';
import { surroundings } from './parts-surroundings.mjs';
import { tapeSolid } from './tape.mjs';

/**
 * Everything as POV-Ray text, in the chamber frame; the solids are kept apart so that each is bounded by itself.
 * @param {import('./sets.mjs').MediaSet} set @param {number} strokeMm @param {import('./tape.mjs').Hold | undefined} hold @param {string} tapeFace @param {{ bar?: boolean }} [options]
 */
export function world(set, strokeMm, hold, tapeFace, { bar = false } = {}) {
  const state = stateAt(set.wheelEnd, strokeMm);
  const [cx, cy] = set.wheelEnd.camshaftMm;
  const axleMm = /** @type {[number, number]} */ ([
    cx + set.axleFromCamshaftMm[0],
    cy + set.axleFromCamshaftMm[1],
  ]);
  const faceToPin = set.wheelEnd.releasedPinXmm;
  const drawnNear = [
    chamberSolid({ rodAtFaceYmm: rodAxisPoint(state, 0)[1], lugTurnDeg: set.lugTurnDeg, downY: set.downY }),
    rodSolid(state, {
      pinSide: set.pinSide,
      overStrokeFromPinMm: faceToPin + set.overStroke.shownFromStrokeMm,
      overStrokeLengthMm: set.overStroke.lengthMm,
    }),
    armSolid(state, set.wheelEnd, { isNew: set.newAdjuster ?? false }),
    ...(bar ? [barSolid(state, set.downY)] : []),
    ...surroundings({ camshaftMm: [cx, cy], axleMm, downY: set.downY, seed: set.seed }),
  ];
  return {
    declarations: materials(set.downY) + hexNut(),
    solids: [
      ...drawnNear.map((solid) => `union { ${solid} scale <1, 1, ${-set.nearZ}> }`),
      ...(hold ? [tapeSolid(hold, tapeFace), gloveSolid(hold)] : []),
    ],
  };
}

/**
 * Daylight from outside, under the trailer; placed by the first stand so that it stays put.
 * @param {import('./sets.mjs').MediaSet} set @param {boolean} plain
 */
function lights(set, plain) {
  const at = cameraAt(set.released.stand, set, set.lens);
  const place = (/** @type {[number, number, number]} */ from) => pov(chamberFromCamera(at, from));
  const source = (
    /** @type {[number, number, number]} */ from,
    /** @type {string} */ colour,
    /** @type {number} */ sizeMm,
    /** @type {number} */ n,
  ) =>
    `light_source { ${place(from)} rgb ${colour} ${plain ? '' : `area_light ${sizeMm}*x, ${sizeMm}*y, ${n}, ${n} adaptive 0 jitter circular orient`} }`;
  return `
${source(set.keyLight, '<1.62, 1.51, 1.34>', 900, 4)}
${source([900, -900, 1700], '<0.9, 1.0, 1.15>', 1300, 3)}
light_source { ${place([800, 500, -800])} rgb <0.24, 0.26, 0.285> shadowless }
light_source { ${place([-300, 1500, 900])} rgb <0.26, 0.235, 0.19> shadowless }
light_source { ${place([2600, -1500, 9000])} rgb <0.8, 0.85, 0.9> shadowless fade_distance 3500 fade_power 2 }
`;
}

/**
 * `plain` has lights without extent, which spares time in the many frames of a clip.
 * @param {import('./sets.mjs').MediaSet} set @param {import('./camera.mjs').Camera} camera @param {ReturnType<typeof world>} scene @param {{ plain?: boolean }} [options]
 */
export function picture(set, camera, { declarations, solids }, { plain = false } = {}) {
  return `#version 3.7;
global_settings { assumed_gamma 1.0 max_trace_level 6 }
background { rgb <0.80, 0.85, 0.90> }
${declarations}
${solids.join('\n')}
${lights(set, plain)}
${povCamera(camera)}
`;
}
