// @ts-check
/** Rod, clevis, slack adjuster arm and camshaft, drawn with the near side towards negative z. */
import { rodRadiusMm } from './mechanism.mjs';
import { slab } from './shapes.mjs';

export const pinEnd = /** @type {const} */ ({ cotter: 25, head: 23.5 });
export const camshaftEndMm = 31;
export const clevisBackMm = 74;

/**
 * @param {import('./mechanism.mjs').State} state
 * @param {{ pinSide: 'cotter' | 'head', overStrokeFromPinMm: number, overStrokeLengthMm: number }} look
 */
export function rodSolid(state, { pinSide, overStrokeFromPinMm, overStrokeLengthMm }) {
  const rodLength = 205;
  const far = pinEnd.head;
  const shown = pinSide === 'cotter' ? cotterEnd(-1) + headEnd(1) : headEnd(-1) + cotterEnd(1);
  return `
union {
  cylinder { <-${rodLength}, 0, 0>, <-${clevisBackMm + 30}, 0, 0>, ${rodRadiusMm} texture { T_Rod } texture { T_Grease scale <3, 1, 1> } }
  cylinder { <-${clevisBackMm + 30}, 0, 0>, <-40, 0, 0>, ${rodRadiusMm - 0.05} texture { T_Rod normal { gradient x 1.5 sine_wave scale 2 } } }
  /* weathered over-stroke paint, a coat 0.06 mm thick */
  cylinder { <${-overStrokeFromPinMm - overStrokeLengthMm}, 0, 0>, <${-overStrokeFromPinMm}, 0, 0>, ${rodRadiusMm + 0.06} texture { T_OverStroke } }
  object { HexNut scale <9.5, 13.7, 13.7> rotate x*22 translate <-${clevisBackMm}, 0, 0> }
  /* clevis: barrel, root, two ears */
  union {
    cylinder { <-63.5, 0, 0>, <-40, 0, 0>, 13.2 }
    torus { 12, 1.2 rotate z*90 translate -63.3*x }
    intersection { box { <-50, -16.5, -19>, <-24, 16.5, 19> } cone { <-54, 0, 0>, 15, <-30, 0, 0>, 27 } }
    difference {
      union { box { <-26, -16, -19>, <0, 16, 19> } cylinder { <0, 0, -19>, <0, 0, 19>, 16 } }
      box { <-24, -30, -8.4>, <30, 30, 8.4> }
      cylinder { <0, 0, -30>, <0, 0, 30>, 6.4 }
    }
    texture { T_Cast scale 0.7 } }
  cylinder { <0, 0, -${far - 4}>, <0, 0, ${far - 4}>, 6.35 texture { T_Machined } }
  ${shown}
  matrix <${Math.cos(state.rodRad)}, ${Math.sin(state.rodRad)}, 0, ${-Math.sin(state.rodRad)}, ${Math.cos(state.rodRad)}, 0, 0, 0, 1, ${state.pin.join(', ')}>
}`;
}

/** Plain end of the pin with washer and cotter; the end face is at `side` * 25 mm. @param {1 | -1} side */
function cotterEnd(side) {
  return `
  union {
    difference { cylinder { <0, 0, -19.1>, <0, 0, -21>, 12.5 } cylinder { <0, 0, -19>, <0, 0, -22>, 6.6 } texture { T_Bolt } }
    difference {
      union { cylinder { <0, 0, -15>, <0, 0, -24.2>, 6.35 } cone { <0, 0, -24.2>, 6.35, <0, 0, -25>, 5.6 } }
      cone { <0, 0, -25.05>, 1.55, <0, 0, -23.7>, 0 }
      texture { T_Machined } }
    union {
      cylinder { <-8.5, 0.4, 0>, <8, 0.4, 0>, 1.35 }
      torus { 2.7, 1.15 rotate x*90 scale <1.25, 1, 1> translate <-11, 0, 0> }
      sphere_sweep { cubic_spline 5, <4, 0.9, -0.3>, 1, <7, 0.9, -0.3>, 1, <11, 2.8, -0.6>, 1, <14, 7.6, -0.4>, 0.95, <15, 11, 0>, 0.9 tolerance 0.01 }
      sphere_sweep { cubic_spline 5, <4, -0.6, 0.3>, 1, <7, -0.6, 0.3>, 1, <11.5, -2, 0.6>, 1, <15.5, -5.5, 1>, 0.95, <17, -8, 1>, 0.9 tolerance 0.01 }
      texture { T_Bolt } rotate z*38 translate <0, 0, -22.6> }
    scale <1, 1, ${-side}>
  }`;
}

/** Headed end of the pin; the end face is at `side` * 23.5 mm. @param {1 | -1} side */
function headEnd(side) {
  return `
  difference {
    union { cylinder { <0, 0, -15>, <0, 0, -19.2>, 6.35 } cylinder { <0, 0, -19.2>, <0, 0, -22.7>, 9.6 } cone { <0, 0, -22.7>, 9.6, <0, 0, -23.5>, 8.6 } }
    cone { <0, 0, -23.55>, 1.6, <0, 0, -22.1>, 0 }
    texture { T_Machined } scale <1, 1, ${-side}>
  }`;
}

/** @param {import('./mechanism.mjs').State} state @param {import('./mechanism.mjs').WheelEnd} wheelEnd @param {{ isNew: boolean }} look */
export function armSolid(state, { camshaftMm, armLengthMm }, { isNew }) {
  const c = Math.cos(state.armRad);
  const s = Math.sin(state.armRad);
  return `
union {
  /* arm: stem between the clevis ears, body, barrel of the adjusting mechanism */
  union {
    ${slab([0, 0], 29, [armLengthMm, 0], 16.5, -7.4, 7.4)}
    ${slab([0, 0], 36, [58, 0], 25, -15, 15)}
    ${slab([0, 0], 33, [56, 0], 22, -17.2, 17.2)}
    cylinder { <0, 0, -21.5>, <0, 0, 21.5>, 33 } torus { 33, 1.5 rotate x*90 translate -20*z }
    cone { <30, 3, -3>, 21, <99, 2, -1>, 14.5 } sphere { <99, 2, -1>, 14.5 }
    cylinder { <-31, -35, 0>, <-31, 35, 0>, 17 } sphere { <-31, 35, 0>, 17 }
    cylinder { <-31, 0, -17>, <0, 0, -17>, 12 }
    difference { cylinder { <${armLengthMm}, 0, -8>, <${armLengthMm}, 0, 8>, 16.5 } cylinder { <${armLengthMm}, 0, -9>, <${armLengthMm}, 0, 9>, 6.4 } }
    texture { ${isNew ? 'T_NewCast' : 'T_Cast'} } }
  /* adjusting hexagon and its cap, bolts of the cover, grease nipple */
  union {
    cylinder { <-31, -35, 0>, <-31, -38.5, 0>, 13 texture { ${isNew ? 'T_Zinc' : 'T_Bolt'} } }
    object { HexNut scale <13.5, 6.4, 6.4> rotate z*-90 translate <-31, -38.5, 0> }
    object { HexNut scale <4, 5, 5> rotate y*90 translate <-39, 22, -16> } object { HexNut scale <4, 5, 5> rotate y*90 translate <-39, -22, -16> }
    cylinder { <40, 12, -20>, <40, 12, -25>, 3.6 texture { T_Bolt } } cone { <40, 12, -25>, 3.2, <40, 12, -30>, 2 texture { T_Machined } } sphere { <40, 12, -30.6>, 2.4 texture { T_Machined } }
  }
  /* splined camshaft with washer, retaining ring and centre mark */
  difference {
    union {
      prism { linear_sweep linear_spline 0, ${camshaftEndMm - 1.4}, ${splineCount * 4 + 1}, ${spline()} matrix <1, 0, 0, 0, 0, -1, 0, 1, 0, 0, 0, 0> }
      cone { <0, 0, -${camshaftEndMm - 1.4}>, 17.9, <0, 0, -${camshaftEndMm}>, 16.8 }
    }
    cone { <0, 0, -${camshaftEndMm + 0.05}>, 2.9, <0, 0, -${camshaftEndMm - 2.4}>, 0.4 }
    texture { T_Machined } texture { T_Grease } }
  difference { cylinder { <0, 0, -21.4>, <0, 0, -23.6>, 26.5 } cylinder { <0, 0, -21>, <0, 0, -24>, 19.2 } texture { T_Bolt } texture { T_Grease } }
  difference {
    union { cylinder { <0, 0, -24.2>, <0, 0, -26>, 22.4 } cylinder { <21, 5.4, -24.2>, <21, 5.4, -26>, 4.2 } cylinder { <21, -5.4, -24.2>, <21, -5.4, -26>, 4.2 } }
    cylinder { <0, 0, -24>, <0, 0, -27>, 18.6 } box { <15, -2.6, -27>, <30, 2.6, -24> }
    cylinder { <21.5, 5.4, -24>, <21.5, 5.4, -27>, 1.4 } cylinder { <21.5, -5.4, -24>, <21.5, -5.4, -27>, 1.4 }
    texture { T_Bolt } rotate z*-70 }
  cylinder { <0, 0, 20>, <0, 0, 300>, 18.5 texture { T_Machined } texture { T_Grease scale 2 } }
  matrix <${c}, ${s}, 0, ${-s}, ${c}, 0, 0, 0, 1, ${camshaftMm[0]}, ${camshaftMm[1]}, 0>
}`;
}

/** A pry bar behind the clevis, by which somebody out of the picture pulls the arm. @param {import('./mechanism.mjs').State} state @param {1 | -1} downY */
export function barSolid({ pin: [x, y] }, downY) {
  return `
union {
  sphere_sweep { cubic_spline 6, <${x - 58}, ${y + 26 * downY}, 2>, 5, <${x - 60}, ${y + 12 * downY}, 4>, 6, <${x - 58}, ${y - 10 * downY}, 14>, 8, <${x - 40}, ${y - 60 * downY}, 22>, 8.5, <${x + 20}, ${y - 190 * downY}, 18>, 8.5, <${x + 270}, ${y - 760 * downY}, -40>, 8.5 tolerance 0.01 }
  cone { <${x + 20}, ${y - 190 * downY}, 18>, 8.5, <${x + 270}, ${y - 760 * downY}, -40>, 8.5 }
  texture { T_Bar } }
`;
}

const splineCount = 28;

function spline() {
  const points = [];
  for (let i = 0; i <= splineCount * 4; i += 1) {
    const r = i % 4 < 2 ? 19 : 17.4;
    const a = ((i % (splineCount * 4)) * 2 * Math.PI) / (splineCount * 4);
    points.push(`<${(r * Math.cos(a)).toFixed(5)}, ${(r * Math.sin(a)).toFixed(5)}>`);
  }
  return points.join(', ');
}
