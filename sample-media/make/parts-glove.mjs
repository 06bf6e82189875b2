// @ts-check
/** A work glove round the tape case, so that somebody holds it. */
import { tapeAxes } from './tape.mjs';

/** @param {import('./tape.mjs').Hold} hold */
export function gloveSolid(hold) {
  const { along, across, normal, corner } = tapeAxes(hold);
  const x = 304.8;
  const finger = (/** @type {number} */ fx, /** @type {number} */ bend) => `
    cylinder { <${fx}, 62, -24>, <${fx - 3}, 70, 4>, 12.5, 1 }
    cylinder { <${fx - 3}, 70, 4>, <${fx - 5}, ${50 - bend}, 20>, 12, 1 }
    cylinder { <${fx - 5}, ${50 - bend}, 20>, <${fx - 5}, ${30 - bend}, 19>, 11.5, 1 }`;
  return `
union {
blob { threshold 0.55
  ${finger(x + 22, 0)} ${finger(x + 41, 4)} ${finger(x + 60, 3)} ${finger(x + 77, -3)}
  sphere { <${x + 48}, 40, -44>, 52, 1.2 } sphere { <${x + 74}, 52, -52>, 50, 1 }
  cylinder { <${x + 70}, 50, -52>, <${x + 165}, 92, -72>, 52, 1.1 }
  cylinder { <${x + 40}, 6, -44>, <${x + 22}, -6, -16>, 14, 1 }
  texture { T_Glove } }
  cone { <${x + 128}, 77, -66>, 41, <${x + 600}, 300, -150>, 62 texture { T_Sleeve } }
  torus { 40, 3.5 rotate z*-66 rotate y*14 translate <${x + 130}, 78, -66> texture { T_Sleeve } }
  matrix <${[...along, ...across, ...normal, ...corner].map((n) => n.toFixed(9)).join(', ')}>
}
`;
}
