// @ts-check
/**
 * Ends of pin and camshaft of many kinds, as POV-Ray text, near side towards negative z: drilled or blank, chamfered, rounded by blows, domed,
 * rusty, greased, painted over; cotter or clip, washer with play; camshafts with few or many splines, ring.
 */
import { slab } from '../../sample-media/make/shapes.mjs';

/**
 * @typedef {import('./accuracy-render-draws.mjs').Draws} Draws
 * @typedef {ReturnType<typeof drawPin>} Pin
 * @typedef {ReturnType<typeof drawShaft>} Shaft
 */

const STUFF = ['T_Machined', 'T_Bolt', 'T_Cast', 'T_Rod', 'T_Zinc', 'T_Band', 'T_Rim'];

/** @param {Draws} draw @param {number} strong */
function drawStuff(draw, strong) {
  const by = () => [0, 1, 2].map(() => draw.uniform(-500, 500).toFixed(2)).join(', ');
  const rust = draw.uniform(0.3, 1.2);
  // Drawn once for grease: pictures that were made keep their seeds.
  draw.uniform(0, 1);
  return {
    base: `texture { ${draw.oneOf(STUFF)} translate <${by()}> }`,
    over:
      (draw.uniform(0, 1) < 0.5 * strong
        ? `texture { pigment { granite scale ${draw.uniform(3, 16).toFixed(1)} color_map { [0 rgbt <0.1,0.05,0.03,1>] [${Math.min(0.98, rust * 0.6).toFixed(2)} rgbt <0.17,0.08,0.035,0.9>] [${Math.min(0.99, rust * 0.8 + 0.02).toFixed(2)} rgbt <0.2,0.09,0.04,0.15>] [1 rgbt <0.13,0.06,0.03,0>] } translate <${by()}> } normal { granite 0.3 scale 2 } finish { F_Dull } }`
        : '') +
      (draw.uniform(0, 1) < 0.35 * strong
        ? `texture { T_Grease scale ${draw.uniform(0.6, 2).toFixed(2)} translate <${by()}> }`
        : '') +
      (draw.uniform(0, 1) < 0.25 ? `texture { Splash scale 0.3 translate <${by()}> }` : ''),
  };
}

/** @param {ReturnType<typeof drawStuff>} stuff */
const look = ({ base, over }) => `${base} ${over}`;

/** An end face at 0, the part behind it towards positive z. hole: how it is drilled. @typedef {{ radius: number, chamfer: number, slope: number, round: number, dome: number, hole: number, holeDeep: number, relief: number }} End */

/** @param {Draws} draw @param {number} radius @param {{ drilled: number, hole: readonly [number, number] }} how @returns {End} */
function drawEnd(draw, radius, { drilled, hole }) {
  const kind = draw.uniform(0, 1);
  const isDrilled = draw.uniform(0, 1) < drilled;
  const holeRadius = draw.uniform(...hole) * radius;
  return {
    radius,
    chamfer: kind < 0.7 ? draw.uniform(0.03, 0.16) * radius : 0,
    slope: draw.uniform(0.4, 1.5),
    round: kind < 0.7 ? 0 : draw.uniform(0.04, 0.2) * radius,
    dome: draw.uniform(0, 1) < 0.15 && !isDrilled ? draw.uniform(0.02, 0.08) * radius : 0,
    hole: isDrilled ? holeRadius : 0,
    holeDeep: holeRadius * draw.uniform(0.8, 1.8),
    relief: isDrilled && draw.uniform(0, 1) < 0.3 ? draw.uniform(1.15, 1.5) : 0,
  };
}

/** Body from 0 back to `long`; what is worn off an end has no sharp edge. @param {End} end @param {number} long */
function endSolid({ radius, chamfer, slope, round, dome, hole, holeDeep, relief }, long) {
  const edge = chamfer
    ? `cone { <0, 0, 0>, ${radius - chamfer}, <0, 0, ${chamfer * slope}>, ${radius} } cylinder { <0, 0, ${chamfer * slope}>, <0, 0, ${long}>, ${radius} }`
    : `cylinder { <0, 0, 0>, <0, 0, ${long}>, ${radius - round} } torus { ${radius - round}, ${round} rotate x*90 translate <0, 0, ${round}> } cylinder { <0, 0, ${round}>, <0, 0, ${long}>, ${radius} }`;
  const flat = radius - chamfer - round;
  const ball = dome ? (flat * flat + dome * dome) / (2 * dome) : 0;
  const cap = dome
    ? `intersection { sphere { <0, 0, ${ball - dome}>, ${ball} } cylinder { <0, 0, ${-dome - 1}>, <0, 0, 0.01>, ${flat} } }`
    : '';
  const drilled = hole
    ? `cone { <0, 0, -0.02>, ${hole * 1.01}, <0, 0, ${holeDeep}>, ${hole * 0.1} }` +
      (relief
        ? `cone { <0, 0, -0.02>, ${hole * relief}, <0, 0, ${hole * (relief - 1) * 0.6}>, ${hole} }`
        : '')
    : '';
  return drilled ? `difference { union { ${edge} } ${drilled} }` : `union { ${edge} ${cap} }`;
}

/** @param {Draws} draw */
export function drawPin(draw) {
  const isHead = draw.uniform(0, 1) < 0.4;
  const radius = isHead ? draw.uniform(8.5, 11.5) : draw.oneOf([6.35, 6.35, 7.94]);
  return {
    isHead,
    end: drawEnd(draw, radius, { drilled: 0.45, hole: [0.14, 0.3] }),
    /** Where the face is, and where what lies under it begins. */
    faceMm: draw.uniform(22.5, 27),
    standMm: isHead ? draw.uniform(3, 5) : draw.uniform(3.5, 7),
    washer: isHead ? 0 : draw.uniform(1.6, 2.3) * radius,
    washerOff: [draw.uniform(-0.4, 0.4), draw.uniform(-0.4, 0.4)],
    fastener: isHead ? 'none' : draw.oneOf(['cotter', 'cotter', 'cotter', 'clip', 'none']),
    turn: draw.uniform(0, 360),
    ear: draw.uniform(15, 18),
    stuff: drawStuff(draw, 1),
    other: drawStuff(draw, 1),
    grooved: draw.uniform(0, 1) < 0.3,
    cast: drawStuff(draw, 0.6),
  };
}

/** @param {Draws} draw */
export function drawShaft(draw) {
  const radius = draw.uniform(15.5, 20.5);
  const kind = draw.oneOf(['splined', 'splined', 'splined', 'fine', 'round']);
  return {
    kind,
    teeth: kind === 'splined' ? draw.oneOf([10, 10, 28, 37]) : 46,
    end: drawEnd(draw, radius, { drilled: 0.8, hole: [0.1, 0.28] }),
    faceMm: draw.uniform(27, 34),
    ring: draw.uniform(0, 1) < 0.7,
    washer: draw.uniform(1.35, 1.6) * radius,
    boss: draw.uniform(1.75, 2) * radius,
    bossMm: draw.uniform(19, 22.5),
    turn: draw.uniform(0, 360),
    stuff: drawStuff(draw, 1),
    other: drawStuff(draw, 1),
    cast: drawStuff(draw, 0.6),
  };
}

/** Where the axis comes out of the end: mm before the middle of the arm. @param {Pin | Shaft} part */
export const tipMm = ({ end, faceMm }) => faceMm + end.dome;

/** @param {import('../../sample-media/make/mechanism.mjs').State} state @param {Pin} pin */
export function pinSolid(state, pin) {
  const { end, faceMm, standMm, washer, washerOff, ear } = pin;
  const under = faceMm - standMm;
  const grooves = pin.grooved ? 'normal { wood 0.25 scale 0.9 }' : '';
  const [wx, wy] = washerOff;
  const r = end.radius;
  const rod = 7.94;
  return `
union {
  cylinder { <-205, 0, 0>, <-40, 0, 0>, ${rod} texture { T_Rod } texture { T_Grease scale <3, 1, 1> } }
  union {
    cylinder { <-63.5, 0, 0>, <-40, 0, 0>, 13.2 }
    difference {
      union { box { <-50, ${-ear}, -19>, <0, ${ear}, 19> } cylinder { <0, 0, -19>, <0, 0, 19>, ${ear} } }
      box { <-24, -30, -8.4>, <30, 30, 8.4> }
    }
    ${look(pin.cast)} }
  ${washer ? `cylinder { <${wx}, ${wy}, -18.9>, <${wx}, ${wy}, ${-under}>, ${washer} ${look(pin.other)} }` : ''}
  object { ${endSolid(end, standMm + 2)} translate <0, 0, ${-faceMm}> ${look(pin.stuff)} ${grooves} }
  ${fastener(pin, r, under)}
  matrix <${Math.cos(state.rodRad)}, ${Math.sin(state.rodRad)}, 0, ${-Math.sin(state.rodRad)}, ${Math.cos(state.rodRad)}, 0, 0, 0, 1, ${state.pin.join(', ')}>
}`;
}

/** @param {Pin} pin @param {number} r @param {number} under */
function fastener({ fastener: kind, turn, other }, r, under) {
  if (kind === 'none') return '';
  const at = `rotate z*${turn.toFixed(1)} translate <0, 0, ${-(under + 1.3)}>`;
  if (kind === 'clip')
    return `difference { torus { ${r + 1}, 1.2 rotate x*90 } box { <-3, 0, -3>, <3, ${2 * r}, 3> } ${look(other)} ${at} }`;
  return `union {
    cylinder { <${-r - 2}, 0, 0>, <${r + 2}, 0, 0>, 1.3 }
    torus { 2.7, 1.1 rotate x*90 scale <1.25, 1, 1> translate <${-r - 4.5}, 0, 0> }
    sphere_sweep { cubic_spline 5, <${r - 2}, 0.9, -0.3>, 1, <${r}, 0.9, -0.3>, 1, <${r + 4}, 2.8, -0.6>, 1, <${r + 7}, 7.6, -0.4>, 0.95, <${r + 8}, 11, 0>, 0.9 tolerance 0.01 }
    sphere_sweep { cubic_spline 5, <${r - 2}, -0.6, 0.3>, 1, <${r}, -0.6, 0.3>, 1, <${r + 4}, -2, 0.6>, 1, <${r + 8}, -5.5, 1>, 0.95, <${r + 10}, -8, 1>, 0.9 tolerance 0.01 }
    ${look(other)} ${at} }`;
}

/** @param {import('../../sample-media/make/mechanism.mjs').State} state @param {import('../../sample-media/make/mechanism.mjs').WheelEnd} wheelEnd @param {Shaft} shaft */
export function shaftSolid(state, { camshaftMm, armLengthMm }, shaft) {
  const { end, faceMm, kind, washer, boss, bossMm, ring } = shaft;
  const [c, s] = [Math.cos(state.armRad), Math.sin(state.armRad)];
  const root = end.radius * 0.96;
  const long = faceMm - bossMm + 4;
  const body = endSolid(end, long);
  const teeth =
    kind === 'splined' || kind === 'fine'
      ? `intersection { object { ${body} } prism { linear_sweep linear_spline ${-end.dome - 1}, ${long + 1}, ${4 * shaft.teeth + 1}, ${spline(shaft.teeth, end.radius * 1.01, shaft.teeth === 10 ? end.radius * 0.86 : root * 0.97)} matrix <1, 0, 0, 0, 0, -1, 0, 1, 0, 0, 0, 0> scale <1, 1, -1> } }`
      : body;
  return `
union {
  union {
    ${slab([0, 0], 29, [armLengthMm, 0], 16.5, -7.4, 7.4)}
    ${slab([0, 0], 36, [58, 0], 25, -15, 15)}
    cylinder { <0, 0, ${-bossMm}>, <0, 0, 21>, ${boss} } torus { ${boss}, 1.5 rotate x*90 translate <0, 0, ${-bossMm + 1.5}> }
    cylinder { <-31, -35, 0>, <-31, 35, 0>, 17 }
    ${look(shaft.cast)} }
  object { ${teeth} rotate z*${shaft.turn.toFixed(1)} translate <0, 0, ${-faceMm}> ${look(shaft.stuff)} }
  cylinder { <0, 0, ${-bossMm}>, <0, 0, ${-bossMm - 2.2}>, ${washer} ${look(shaft.other)} }
  ${
    ring
      ? `difference { cylinder { <0, 0, ${-bossMm - 2.3}>, <0, 0, ${-bossMm - 4}>, ${end.radius * 1.22} } cylinder { <0, 0, 0>, <0, 0, ${-bossMm - 5}>, ${end.radius * 1.02} } box { <${end.radius * 0.8}, -2.6, ${-bossMm - 6}>, <30, 2.6, ${-bossMm}> } rotate z*${(2 * shaft.turn).toFixed(1)} ${look(shaft.other)} }`
      : ''
  }
  matrix <${c}, ${s}, 0, ${-s}, ${c}, 0, 0, 0, 1, ${camshaftMm[0]}, ${camshaftMm[1]}, 0>
}`;
}

/** @param {number} count @param {number} tip @param {number} root */
function spline(count, tip, root) {
  return Array.from({ length: 4 * count + 1 }, (_, i) => {
    const r = i % 4 < 2 ? tip : root;
    const a = ((i % (count * 4)) * 2 * Math.PI) / (count * 4);
    return `<${(r * Math.cos(a)).toFixed(5)}, ${(r * Math.sin(a)).toFixed(5)}>`;
  }).join(', ');
}

/** A wall of something behind all. @param {Draws} draw */
export function behind(draw) {
  return `plane { z, ${draw.uniform(60, 200).toFixed(1)} texture { ${draw.oneOf(['T_Plate', 'T_Axle', 'T_Gravel', 'T_Drum', 'T_Housing'])} } }`;
}
