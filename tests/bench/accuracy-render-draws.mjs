// @ts-check
/** What is drawn for a ray-traced pair: wheel end, lens, light, where the camera stands, how card or tape are held. */
import { stateAt } from '../../sample-media/make/mechanism.mjs';
import { pinEnd } from '../../sample-media/make/parts-linkage.mjs';
import { randomFrom } from '../../sample-media/make/vectors.mjs';
import { behindCardMm, layCard } from './accuracy-render-card.mjs';

/**
 * @typedef {import('../../sample-media/make/vectors.mjs').Vec3} Vec3
 * @typedef {import('../../sample-media/make/sets.mjs').MediaSet} MediaSet
 * @typedef {'target on the pin' | 'target anew' | 'tape'} Held
 * @typedef {ReturnType<typeof drawsFrom>} Draws
 * @typedef {ReturnType<typeof drawHolds>[number]} Hold
 */

export const STATES = /** @type {const} */ (['released', 'applied']);

/** @param {number} seed */
export function drawsFrom(seed) {
  const next = randomFrom(7919 * seed + 13);
  const uniform = (/** @type {number} */ low, /** @type {number} */ high) => low + (high - low) * next();
  const normal = (/** @type {number} */ mean, /** @type {number} */ sigma) =>
    mean + sigma * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  /** @template T @param {readonly T[]} list @returns {T} */
  const oneOf = (list) => /** @type {T} */ (list[Math.floor(uniform(0, list.length - 1e-9))]);
  return { uniform, normal, oneOf };
}

/** @param {number} number @param {Draws} draw @returns {{ set: MediaSet, held: Held }} */
export function drawSet(number, draw) {
  const held = /** @type {const} */ (['target on the pin', 'tape', 'target anew', 'target on the pin'])[
    number % 4
  ];
  // The tape of the sample media has its print towards negative z.
  const nearZ = held === 'tape' || number % 2 === 0 ? -1 : 1;
  const armLengthMm = draw.oneOf([127, 139.7, 152.4]);
  const releasedPinXmm = draw.uniform(112, 140);
  const angle = ((97 + draw.uniform(0, 13)) * Math.PI) / 180;
  const pinY = draw.normal(0, 4);
  const focal = draw.uniform(0.7, 0.85) * 1920;
  return {
    held,
    set: {
      name: `pair-${number}`,
      title: 'Invented wheel end',
      kind: 'pair',
      nearZ,
      downY: draw.oneOf([1, -1]),
      seed: 5000 + 10 * number,
      wheelEnd: {
        camshaftMm: [releasedPinXmm - armLengthMm * Math.cos(angle), pinY + armLengthMm * Math.sin(angle)],
        armLengthMm,
        releasedPinXmm,
        innerEndBehindFaceMm: draw.uniform(72, 86),
      },
      strokeMm: draw.uniform(25, 58),
      overStroke: { shownFromStrokeMm: 49, lengthMm: 25 },
      pinSide: draw.oneOf(['cotter', 'head']),
      lugTurnDeg: draw.oneOf([14, -18, 22, -10]),
      axleFromCamshaftMm: [draw.uniform(80, 140), draw.uniform(90, 150)],
      keyLight: draw.oneOf([
        [1150, -640, -520],
        [-1500, -520, -350],
        [-1000, -600, -1000],
        [400, -1200, -900],
      ]),
      lens: {
        widthPx: 1920,
        heightPx: 1080,
        focalPx: focal,
        principalPx: [960 + draw.normal(0, 10), 540 + draw.normal(0, 10)],
      },
      // A first try: the pair is taken from where all can be seen.
      released: { stand: drawStand(draw), takenAt: '' },
      applied: { stand: drawStand(draw), takenAt: '' },
    },
  };
}

/** Up to about 35 degrees off square. @param {Draws} draw */
export function drawStand(draw) {
  return {
    aim: /** @type {Vec3} */ ([draw.uniform(85, 125), draw.uniform(25, 60), 0]),
    distanceMm: draw.uniform(560, 1000),
    yawDeg: draw.uniform(-30, 30),
    liftDeg: draw.uniform(-20, 20),
    rollDeg: draw.normal(0, 6),
  };
}

/** A hand holds the camera elsewhere for the second picture. @param {MediaSet['released']['stand']} stand @param {Draws} draw */
export function again(stand, draw) {
  const [x, y, z] = stand.aim;
  return {
    aim: /** @type {Vec3} */ ([x + draw.normal(0, 12), y + draw.normal(0, 12), z]),
    distanceMm: stand.distanceMm * (1 + draw.normal(0, 0.06)),
    yawDeg: stand.yawDeg + draw.normal(0, 3.4),
    liftDeg: stand.liftDeg + draw.normal(0, 3.4),
    rollDeg: stand.rollDeg + draw.normal(0, 3),
  };
}

/** How card or tape lie in each picture. @param {Held} held @param {MediaSet} set @param {Draws} draw */
export function drawHolds(held, set, draw) {
  const size = 1 + draw.normal(0, 0.003);
  const ends = STATES.map((state) => {
    const { pin } = stateAt(set.wheelEnd, state === 'applied' ? set.strokeMm : 0);
    return /** @type {Vec3} */ ([pin[0], pin[1], set.nearZ * pinEnd[set.pinSide]]);
  });
  const lay = (/** @type {Vec3} */ pin, /** @type {boolean} */ touches) => {
    const tilt = touches ? 2 : 2.9;
    const hold = {
      nearZ: set.nearZ,
      pin,
      size,
      pinOnCardMm: cardReach(set.nearZ, Math.min(98 + draw.uniform(-25, 25), pin[0] - 8)),
      edgeMm: draw.uniform(2.5, 4.5),
      turnDeg: draw.normal(0, 3),
      tiltAlongDeg: draw.normal(0, tilt),
      tiltAcrossDeg: draw.normal(0, tilt),
      standOffMm: touches ? 0 : draw.uniform(1, 12),
    };
    if (!touches) return layCard(hold);
    // A stiff card cannot go through the pin: it touches where the pin stands out farthest, but for rust and play.
    const through = Math.max(...ends.map((end) => -behindCardMm(layCard(hold), end)));
    return layCard({ ...hold, standOffMm: through + Math.abs(draw.normal(0, 0.8)) + 1.2 });
  };
  const mid = /** @type {Vec3} */ (ends[0].map((v, i) => (v + ends[1][i]) / 2));
  const still = held === 'target on the pin' ? lay(mid, true) : undefined;
  return ends.map((end) => {
    const tape = {
      zero: /** @type {Vec3} */ ([draw.uniform(0.2, 1.2), draw.uniform(-22, -12), draw.uniform(-30, -20)]),
      inPlaneDeg: draw.normal(0, 2.5),
      outOfPlaneDeg: draw.normal(0, 2.5),
      twistDeg: draw.normal(0, 5),
    };
    return held === 'tape' ? { tape } : { card: still ?? lay(end, false) };
  });
}

/** From the card's printed left edge to the pin, where so much of it lies on the chamber's side. @param {1 | -1} nearZ @param {number} reach */
function cardReach(nearZ, reach) {
  return nearZ === -1 ? reach : 196 - reach;
}
