// @ts-check
/** Axle, drum, wheel, spring, frame rail, ground: what stands round the brake, near side towards negative z. */
import { slab } from './shapes.mjs';
import { randomFrom } from './vectors.mjs';

/** @param {{ camshaftMm: readonly [number, number], axleMm: readonly [number, number], downY: 1 | -1, seed: number }} place */
export function surroundings({ camshaftMm: [cx, cy], axleMm, downY: d, seed }) {
  const [ax, ay] = axleMm;
  const ground = ay + d * 505;
  const springY = ay - d * 66;
  const leaves = Array.from({ length: 6 }, (_, i) => {
    const y = springY - d * (i * 12.5 + 6);
    const halfMm = i > 3 ? 575 : 250 + i * 75;
    return `box { <${ax - halfMm}, ${y - 5.6}, ${150 - i}>, <${ax + halfMm}, ${y + 5.6}, ${228 + i}> }`;
  });
  const bolt = (/** @type {number} */ x, /** @type {number} */ z) =>
    `cylinder { <${x}, ${ay + d * 90}, ${z}>, <${x}, ${springY - d * 104}, ${z}>, 9 } object { HexNut scale <16, 17, 17> rotate z*${90 * d} translate <${x}, ${ay + d * 76}, ${z}> }`;
  return [
    ...stones(seed, ground, d),
    `
union {
  cylinder { <${ax}, ${ay}, -2600>, <${ax}, ${ay}, 420>, 63.5 texture { T_Axle } }
  torus { 63.5, 5 rotate x*90 translate <${ax}, ${ay}, 74> texture { T_Axle } }
  /* bracket plate to the axle, camshaft bearing and tube */
  union { ${slab([8, 62], 23, [cx, cy], 52, 46, 58)} ${slab([cx, cy], 52, axleMm, 74, 46, 58)} texture { T_Plate } }
  box { <9, 38, 40>, <46, 46, 58> texture { T_Plate } }
  cylinder { <${cx}, ${cy}, 30>, <${cx}, ${cy}, 64>, 36 texture { T_Cast } }
  union { ${[0.5, 2.1, 3.9, 5.4].map((a) => `object { HexNut scale <8, 8.5, 8.5> rotate y*90 translate <${cx + 44 * Math.cos(a)}, ${cy + 44 * Math.sin(a)}, 46> }`).join(' ')} }
  cylinder { <${cx}, ${cy}, 58>, <${cx}, ${cy}, 300>, 29 texture { T_Axle } }
  /* dust shield, drum, wheel */
  difference { cylinder { <${ax}, ${ay}, 268>, <${ax}, ${ay}, 274>, 206 } cylinder { <${ax}, ${ay}, 260>, <${ax}, ${ay}, 280>, 70 } texture { T_Plate } }
  difference { cylinder { <${ax}, ${ay}, 262>, <${ax}, ${ay}, 480>, 226 } cylinder { <${ax}, ${ay}, 250>, <${ax}, ${ay}, 420>, 208 } texture { T_Drum } }
  torus { 222, 6 rotate x*90 translate <${ax}, ${ay}, 268> texture { T_Drum } }
  difference { cylinder { <${ax}, ${ay}, 330>, <${ax}, ${ay}, 560>, 290 } cylinder { <${ax}, ${ay}, 320>, <${ax}, ${ay}, 540>, 272 } texture { T_Rim } }
  torus { 286, 9 rotate x*90 translate <${ax}, ${ay}, 330> texture { T_Rim } }
  union {
    torus { 395, 112 rotate x*90 scale <1, 1, 1.15> translate <${ax}, ${ay}, 440> }
    torus { 330, 8 rotate x*90 translate <${ax}, ${ay}, 331> }
    torus { 440, 4 rotate x*90 translate <${ax}, ${ay}, 325> }
    torus { 395, 112 rotate x*90 scale <1, 1, 1.15> translate <${ax}, ${ay}, 770> }
    texture { T_Tyre } }
  /* leaf spring pack, seat, clamps */
  union { ${leaves.join(' ')} texture { T_Spring } }
  box { <${ax - 70}, ${springY - d * 2}, 140>, <${ax + 70}, ${ay}, 238> texture { T_Axle } }
  union { ${[-58, 58].map((dx) => `${bolt(ax + dx, 140)} ${bolt(ax + dx, 240)}`).join(' ')} texture { T_Bolt } }
  box { <${ax - 80}, ${ay + d * 64}, 122>, <${ax + 80}, ${ay + d * 80}, 256> texture { T_Axle } }
  /* frame rail and cross member, trailer floor */
  union {
    box { <-3000, ${ay - d * 410}, 90>, <3000, ${ay - d * 422}, 250> }
    box { <-3000, ${ay - d * 420}, 164>, <3000, ${ay - d * 640}, 174> }
    box { <-3000, ${ay - d * 640}, 90>, <3000, ${ay - d * 652}, 250> }
    box { <-420, ${ay - d * 520}, -2000>, <-410, ${ay - d * 640}, 170> } box { <-470, ${ay - d * 520}, -2000>, <-410, ${ay - d * 530}, 170> }
    box { <${ax - 585}, ${springY + d * 14}, 138>, <${ax - 505}, ${ay - d * 412}, 146> } box { <${ax - 585}, ${springY + d * 14}, 232>, <${ax - 505}, ${ay - d * 412}, 240> } box { <${ax - 592}, ${springY - d * 40}, 138>, <${ax - 583}, ${ay - d * 412}, 240> }
    texture { T_Axle } }
  box { <-5000, ${ay - d * 660}, -2400>, <5000, ${ay - d * 680}, 1100> texture { T_Spring } no_shadow }
  /* ground: gravel, then gravel heaps and a hazy line of trees */
  box { <-40000, ${ground}, -5000>, <40000, ${ground + d * 300}, 19000> texture { T_Gravel } }
  union { ${heaps(seed + 1, ground, d)} texture { T_Heap } }
  box { <-40000, ${ground}, 19000>, <40000, ${ground - d * 4000}, 19010> texture { T_Tree scale <5000, 9000, 5000> translate ${ground}*y } }
}
`,
  ];
}

/** In patches, so that a ray asks few stones. @param {number} seed @param {number} ground @param {1 | -1} d */
function stones(seed, ground, d) {
  const next = randomFrom(seed);
  /** @type {Map<string, string[]>} */
  const patches = new Map();
  for (let i = 0; i < 2600; i += 1) {
    const z = 150 + 3200 * next() ** 1.7;
    const x = (next() - 0.5) * (1500 + 2 * z);
    const r = 3 + 12 * next() ** 3;
    const patch = `${Math.floor(x / 500)} ${Math.floor(z / 250)}`;
    const stone = `sphere { 0, ${r.toFixed(2)} scale <1, ${(0.5 + 0.4 * next()).toFixed(2)}, ${(0.7 + 0.6 * next()).toFixed(2)}> rotate <${(next() * 40).toFixed(0)}, ${(next() * 180).toFixed(0)}, ${(next() * 40).toFixed(0)}> translate <${x.toFixed(1)}, ${(ground - d * r * 0.2).toFixed(1)}, ${z.toFixed(1)}> }`;
    patches.set(patch, [...(patches.get(patch) ?? []), stone]);
  }
  return [...patches.values()].map((list) => `union { ${list.join('\n')} texture { T_Stone } }`);
}

/** @param {number} seed @param {number} ground @param {1 | -1} d */
function heaps(seed, ground, d) {
  const next = randomFrom(seed);
  const list = [];
  for (let x = -14000; x < 14000; x += 2600) {
    const h = 900 + 900 * next();
    list.push(
      `cone { 0, ${(h * 1.75).toFixed(0)}, <0, ${(-d * h).toFixed(0)}, 0>, ${(h * 0.22).toFixed(0)} translate <${(x + 1500 * next()).toFixed(0)}, ${ground}, ${(9000 + 5000 * next()).toFixed(0)}> }`,
    );
  }
  return list.join('\n');
}
