// @ts-check

export const clampBandDiameterMm = 205.581;
export const clampBandRimXmm = -54;

/** @param {number} angleRad @param {1 | -1} nearZ @returns {import('./vectors.mjs').Vec3} */
export function clampBandPoint(angleRad, nearZ) {
  const r = clampBandDiameterMm / 2;
  return [clampBandRimXmm, r * Math.cos(angleRad), nearZ * r * Math.sin(angleRad)];
}

/**
 * Clamp-type chamber with its face at x = 0, drawn with the near side towards negative z.
 * @param {{ rodAtFaceYmm: number, lugTurnDeg: number, downY: 1 | -1 }} options
 */
export function chamberSolid({ rodAtFaceYmm, lugTurnDeg, downY }) {
  const r = clampBandDiameterMm / 2;
  const rim = clampBandRimXmm;
  const lug = (/** @type {number} */ turn) => `
  union {
    box { <${rim - 17}, 96, -17>, <${rim - 1.5}, 127, -6.5> }
    box { <${rim - 17}, 96, 6.5>, <${rim - 1.5}, 127, 17> }
    cylinder { <${rim - 17}, 99, -17>, <${rim - 17}, 127, -17>, 1.2 }
    texture { T_Band }
    rotate x*${turn}
  }
  union {
    cylinder { <${rim - 9.2}, 116, -30>, <${rim - 9.2}, 116, 36>, 5 texture { T_Bolt normal { gradient z 1.2 sine_wave scale 1.4 } } }
    object { HexNut scale <9, 13, 13> rotate y*-90 translate <${rim - 9.2}, 116, 17> }
    object { HexNut scale <7.5, 13, 13> rotate y*-90 translate <${rim - 9.2}, 116, -24.5> }
    rotate x*${turn}
  }`;
  const stud = (/** @type {number} */ y) => `
  union {
    cylinder { <-2, 0, 0>, <36, 0, 0>, 7.9 texture { T_Bolt normal { gradient x 1.4 sine_wave scale 1.8 } } }
    cone { <36, 0, 0>, 7.9, <37.6, 0, 0>, 6.4 texture { T_Bolt } }
    cylinder { <9.5, 0, 0>, <12.3, 0, 0>, 17 texture { T_Bolt } }
    object { HexNut scale <14, 13.8, 13.8> rotate x*${y > 0 ? 17 : -9} translate 12.3*x }
    translate ${y}*y
  }`;
  return `
union {
  /* flat face with a clear hole, and the seal plate that rides on the rod, flush with the face */
  difference { cylinder { <-4, 0, 0>, <0, 0, 0>, 70 } cylinder { <-9, 0, 0>, <1, 0, 0>, 24 } texture { T_Housing } }
  difference { cylinder { <-3, ${rodAtFaceYmm}, 0>, <0, ${rodAtFaceYmm}, 0>, 18.5 } cylinder { <-9, ${rodAtFaceYmm}, 0>, <1, ${rodAtFaceYmm}, 0>, 7.9 } texture { T_Seal } }
  cylinder { <-12, 0, 0>, <-8, 0, 0>, 30 pigment { rgb 0.01 } finish { ambient 0 } }
  union {
    torus { 70, 9 rotate z*90 translate -9*x }
    difference { cone { <-9, 0, 0>, 79, <-46, 0, 0>, 86.5 } cylinder { <-60, 0, 0>, <1, 0, 0>, 69 } }
    intersection { difference { cylinder { <-46.6, 0, 0>, <-54, 0, 0>, 95 } torus { 95, 8.5 rotate z*90 translate -45.5*x } } cylinder { <-40, 0, 0>, <-60, 0, 0>, 95 } }
    texture { T_Housing } }
  /* pressed rib */
  union { torus { 51, 1.6 rotate z*90 translate -0.9*x } texture { T_Housing } }
  /* clamp band: two halves; the rim towards the rod is a sharp circle */
  difference {
    union {
      cone { <${rim}, 0, 0>, ${r}, <${rim + 6}, 0, 0>, 93.5 }
      cylinder { <${rim}, 0, 0>, <${rim - 17}, 0, 0>, ${r} }
      cone { <${rim - 17}, 0, 0>, ${r}, <${rim - 24}, 0, 0>, 92 }
    }
    union { box { <-200, 60, -6.5>, <0, 140, 6.5> } box { <-200, -60, -6.5>, <0, -140, 6.5> } rotate x*${lugTurnDeg} }
    texture { T_Band }
  }
  cylinder { <${rim + 1}, 0, 0>, <${rim - 18}, 0, 0>, 96 texture { T_Seal } }
  ${lug(lugTurnDeg)} ${lug(lugTurnDeg + 180)}
  /* pressure side */
  union {
    cylinder { <${rim - 17}, 0, 0>, <${rim - 22}, 0, 0>, 95 }
    cone { <${rim - 20}, 0, 0>, 88, <${rim - 40}, 0, 0>, 83 }
    torus { 63, 20 rotate z*90 translate ${rim - 40}*x }
    cylinder { <${rim - 40}, 0, 0>, <${rim - 60}, 0, 0>, 63 }
    torus { 40, 2.5 rotate z*90 translate ${rim - 60}*x }
    cylinder { <${rim - 50}, 0, 0>, <${rim - 66}, 0, 0>, 17 }
    cylinder { <${rim - 50}, ${-36 * downY}, -28>, <${rim - 68}, ${-36 * downY}, -28>, 14 }
    texture { T_Housing } }
  /* port fitting and hose */
  union {
    object { HexNut scale <16, 12, 12> translate <${rim - 84}, ${-36 * downY}, -28> }
    cylinder { <${rim - 82}, ${-36 * downY}, -28>, <${rim - 112}, ${-36 * downY}, -28>, 8.5 texture { T_Bolt } }
  }
  sphere_sweep { cubic_spline 8,
    <${rim - 70}, ${-36 * downY}, -28>, 8, <${rim - 95}, ${-36 * downY}, -28>, 9.5, <${rim - 135}, ${-40 * downY}, -26>, 9.5, <${rim - 185}, ${-92 * downY}, -6>, 9.5,
    <${rim - 180}, ${-190 * downY}, 40>, 9.5, <${rim - 130}, ${-300 * downY}, 90>, 9.5, <${rim - 90}, ${-420 * downY}, 120>, 9.5, <${rim - 70}, ${-520 * downY}, 130>, 9.5
    tolerance 0.01 texture { T_Hose } }
  ${stud(60.3)} ${stud(-60.3)}
  /* bracket plate: open towards the camera, closed behind the rod */
  difference {
    union {
      box { <0.05, -86, -27>, <9.5, 86, 62> }
      cylinder { <0.05, -60.3, -27>, <9.5, -60.3, -27>, 25.7 }
      cylinder { <0.05, 60.3, -27>, <9.5, 60.3, -27>, 25.7 }
    }
    box { <-1, -40, -60>, <11, 40, 28> }
    texture { T_Plate }
  }
}
`;
}

/** A nut of unit size: axis 0..1 along x, radius to the corners 1. */
export function hexNut() {
  return `
#declare HexNut = intersection {
  prism { linear_sweep linear_spline 0, 1, 7, ${hexagon()} }
  cone { <0, -0.3, 0>, 1.17, <0, 1.06, 0>, 0.93 }
  texture { T_Bolt } rotate z*-90 }
`;
}

function hexagon() {
  const points = Array.from(
    { length: 7 },
    (_, i) => `<${Math.cos((i * Math.PI) / 3).toFixed(6)}, ${Math.sin((i * Math.PI) / 3).toFixed(6)}>`,
  );
  return points.join(', ');
}
