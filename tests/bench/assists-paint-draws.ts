/**
 * What is drawn for a painted scene, from sets of ranges that share no seed: some that the judge's constants were chosen on, and two held
 * back, one of which reaches further.
 */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { V } from './assists-paint-solids.ts';

export const CONFUSERS = [
  'rusty rod',
  'rust ring at the face',
  'orange hose behind',
  'orange hose beside',
  'orange hose across',
  'reflector',
  'tail-light glow',
  'brass fitting',
  'glove beside',
  'glove across',
  'orange dirt',
  'warning tape',
  'overspray on the chamber',
] as const;
export type Confuser = (typeof CONFUSERS)[number];

/** Of the confusers, what may also stand about a rod whose band shows, without hiding it. */
const COMPANY: readonly (Confuser | null)[] = [
  null,
  null,
  null,
  'rusty rod',
  'orange hose beside',
  'reflector',
  'brass fitting',
  'glove beside',
  'warning tape',
  'overspray on the chamber',
];

export type SceneKind =
  | { readonly is: 'band' }
  /** Out by less than two millimetres: counted apart. */
  | { readonly is: 'barely' }
  | { readonly is: 'other colour'; readonly what: OtherPaint }
  | { readonly is: 'bare' }
  | { readonly is: 'confuser'; readonly what: Confuser }
  /** Nobody can tell. */
  | { readonly is: 'hidden' | 'dark' };

export const OTHER_PAINTS = ['yellow', 'white', 'blue', 'green'] as const;
export type OtherPaint = (typeof OTHER_PAINTS)[number];

type Range = readonly [low: number, high: number];

export type Ranges = {
  readonly firstSeed: number;
  readonly pxPerMm: Range;
  readonly distanceMm: Range;
  readonly yawDeg: Range;
  readonly liftDeg: Range;
  readonly rodRadiusMm: Range;
  readonly outMm: Range;
  readonly bandLengthMm: Range;
  /** Reflectance of the paint: red, green over red, blue over red. */
  readonly paint: { readonly red: Range; readonly green: Range; readonly blue: Range };
  readonly worn: Range;
  readonly faded: Range;
  readonly dusty: Range;
  readonly edgeMm: Range;
  readonly rust: { readonly red: Range; readonly green: Range; readonly blue: Range };
  readonly rusted: Range;
  readonly grainMm: Range;
  readonly sunned: Range;
  readonly warmth: Range;
  readonly level: Range;
  readonly noise: Range;
  readonly blurPx: Range;
  readonly quality: Range;
  readonly saturation: Range;
  readonly balanced: Range;
  readonly markPx: Range;
};

export const TUNING: Ranges = {
  firstSeed: 1,
  pxPerMm: [1.9, 6],
  distanceMm: [450, 1000],
  yawDeg: [-2, 32],
  liftDeg: [-20, 20],
  rodRadiusMm: [7.6, 8.2],
  outMm: [2, 22],
  bandLengthMm: [12, 30],
  paint: { red: [0.5, 0.8], green: [0.07, 0.2], blue: [0.02, 0.07] },
  worn: [0, 0.4],
  faded: [0, 0.3],
  dusty: [0, 0.35],
  edgeMm: [0.1, 0.8],
  rust: { red: [0.12, 0.36], green: [0.32, 0.52], blue: [0.14, 0.24] },
  rusted: [0, 0.7],
  grainMm: [3, 12],
  sunned: [0, 2.5],
  warmth: [-0.1, 0.45],
  level: [0.05, 0.22],
  noise: [0.004, 0.02],
  blurPx: [0.5, 1.4],
  quality: [70, 95],
  saturation: [0.95, 1.3],
  balanced: [0.6, 1],
  markPx: [0.4, 1.8],
};

/** Was held back for a first study, fell short there, and has been for choosing constants since. */
export const WIDER: Ranges = {
  firstSeed: 1_000_003,
  pxPerMm: [1.7, 8],
  distanceMm: [380, 1200],
  yawDeg: [-3, 38],
  liftDeg: [-26, 26],
  rodRadiusMm: [7.3, 8.5],
  outMm: [2, 26],
  bandLengthMm: [9, 38],
  paint: { red: [0.42, 0.85], green: [0.05, 0.23], blue: [0.015, 0.09] },
  worn: [0, 0.45],
  faded: [0, 0.35],
  dusty: [0, 0.4],
  edgeMm: [0.05, 1.1],
  rust: { red: [0.09, 0.42], green: [0.29, 0.56], blue: [0.12, 0.27] },
  rusted: [0, 0.85],
  grainMm: [2, 17],
  sunned: [0, 3.2],
  warmth: [-0.16, 0.55],
  level: [0.04, 0.28],
  noise: [0.003, 0.026],
  blurPx: [0.4, 1.7],
  quality: [60, 97],
  saturation: [0.9, 1.4],
  balanced: [0.5, 1],
  markPx: [0.3, 2.2],
};

/** Was held back for a second study, fell short there too, and has been for choosing constants since. */
export const WIDEST: Ranges = {
  firstSeed: 2_000_003,
  pxPerMm: [1.6, 8.5],
  distanceMm: [350, 1300],
  yawDeg: [-4, 40],
  liftDeg: [-28, 28],
  rodRadiusMm: [7.2, 8.6],
  outMm: [2, 28],
  bandLengthMm: [8, 40],
  paint: { red: [0.4, 0.87], green: [0.045, 0.24], blue: [0.012, 0.095] },
  worn: [0, 0.48],
  faded: [0, 0.37],
  dusty: [0, 0.43],
  edgeMm: [0.04, 1.2],
  rust: { red: [0.08, 0.44], green: [0.28, 0.57], blue: [0.11, 0.28] },
  rusted: [0, 0.88],
  grainMm: [1.8, 18],
  sunned: [0, 3.4],
  warmth: [-0.18, 0.58],
  level: [0.036, 0.3],
  noise: [0.003, 0.028],
  blurPx: [0.35, 1.8],
  quality: [58, 98],
  saturation: [0.88, 1.43],
  balanced: [0.47, 1],
  markPx: [0.3, 2.3],
};

/** WIDEST in small pictures, which are painted fast and judged with more trouble: many. */
export const SMALL: Ranges = { ...WIDEST, firstSeed: 3_000_003, pxPerMm: [1.6, 5] };

/** Was held back for a third study, of the ranges of WIDEST, and has been for choosing constants since. */
export const THIRD: Ranges = { ...WIDEST, firstSeed: 4_000_003 };

/** Was held back for a fourth study, of the ranges of WIDEST, and has been for choosing constants since. */
export const FOURTH: Ranges = { ...WIDEST, firstSeed: 7_000_003 };

/** Was held back for a fifth study, of the ranges of WIDEST, and has been for choosing constants since. */
export const FIFTH: Ranges = { ...WIDEST, firstSeed: 8_000_003 };

/** Was held back for a sixth study, of the ranges of WIDEST, and has been for choosing constants since. */
export const SIXTH: Ranges = { ...WIDEST, firstSeed: 9_000_003 };

/** Was held back for a seventh study, of the ranges of WIDEST, and has been for choosing constants since. */
export const SEVENTH: Ranges = { ...WIDEST, firstSeed: 11_000_003 };

/** Painted for choosing weights alone: many, of the ranges of SMALL and of WIDEST. */
export const MANY_SMALL: Ranges = { ...SMALL, firstSeed: 6_000_003 };
export const MANY: Ranges = { ...WIDEST, firstSeed: 6_500_003 };
export const MANY_MORE: Ranges = { ...WIDEST, firstSeed: 6_800_003 };

/** The ranges of WIDEST, seeds that nothing was chosen on. */
export const HELD_BACK: Ranges = { ...WIDEST, firstSeed: 12_000_003 };

/** Beyond every range that constants were chosen on; held back too, and told apart. */
export const FURTHER_OUT: Ranges = {
  firstSeed: 5_000_003,
  pxPerMm: [1.5, 5],
  distanceMm: [320, 1500],
  yawDeg: [-6, 44],
  liftDeg: [-32, 32],
  rodRadiusMm: [7.1, 8.8],
  outMm: [2, 31],
  bandLengthMm: [7, 44],
  paint: { red: [0.37, 0.9], green: [0.04, 0.26], blue: [0.01, 0.105] },
  worn: [0, 0.53],
  faded: [0, 0.42],
  dusty: [0, 0.48],
  edgeMm: [0.03, 1.4],
  rust: { red: [0.07, 0.47], green: [0.26, 0.6], blue: [0.1, 0.3] },
  rusted: [0, 0.95],
  grainMm: [1.6, 21],
  sunned: [0, 3.9],
  warmth: [-0.22, 0.66],
  level: [0.03, 0.34],
  noise: [0.003, 0.032],
  blurPx: [0.3, 2],
  quality: [52, 98],
  saturation: [0.82, 1.5],
  balanced: [0.4, 1],
  markPx: [0.3, 2.7],
};

export type SceneDraw = ReturnType<typeof drawScene>;

export function drawScene(ranges: Ranges, kind: SceneKind, index: number) {
  const seed = ranges.firstSeed + index;
  const draw = drawFrom(seed);
  const of = ([low, high]: Range) => draw.uniform(low, high);
  const oneOf = <T>(list: readonly T[]): T =>
    list[Math.min(list.length - 1, Math.floor(draw.uniform(0, list.length)))] as T;
  const red = of(ranges.paint.red);
  const orange: V = [red, red * of(ranges.paint.green), red * of(ranges.paint.blue)];
  const rust = () => {
    const level = of(ranges.rust.red);
    const green = level * of(ranges.rust.green);
    return [level, green, level * of(ranges.rust.blue)] as const;
  };
  const painted = kind.is === 'band' || kind.is === 'barely' || kind.is === 'other colour';
  const outMm = kind.is === 'barely' ? draw.uniform(0.3, 2) : of(ranges.outMm);
  const company = kind.is === 'confuser' ? kind.what : painted ? oneOf(COMPANY) : null;
  return {
    seed,
    kind,
    company,
    band: painted
      ? {
          outMm,
          lengthMm: Math.max(of(ranges.bandLengthMm), 3),
          albedo: kind.is === 'other colour' ? otherPaint(draw, kind.what) : orange,
          worn: of(ranges.worn),
          faded: of(ranges.faded),
          dusty: of(ranges.dusty),
          edgeMm: of(ranges.edgeMm),
        }
      : null,
    rodRadiusMm: of(ranges.rodRadiusMm),
    metal: draw.uniform(0.18, 0.5),
    rusted: company === 'rusty rod' ? draw.uniform(0.6, 1) : of(ranges.rusted),
    rusts: [rust(), rust(), rust()] as const,
    grainMm: of(ranges.grainMm),
    /** Of things of the paint's hue beside the rod. */
    signal: [draw.uniform(0.5, 0.85), draw.uniform(0.05, 0.22), draw.uniform(0.01, 0.06)] as V,
    housing: draw.uniform(0.02, 0.2),
    light: lightFrom(draw, ranges, kind),
    stand: {
      pxPerMm: of(ranges.pxPerMm),
      distanceMm: of(ranges.distanceMm),
      yawDeg: of(ranges.yawDeg),
      liftDeg: of(ranges.liftDeg),
      rollDeg: oneOf([0, 0, 180, 90]) + draw.normal(0, 9),
    },
    camera: {
      level: kind.is === 'dark' ? draw.uniform(0.0004, 0.0012) : of(ranges.level),
      noise: kind.is === 'dark' ? draw.uniform(0.02, 0.03) : of(ranges.noise),
      blurPx: of(ranges.blurPx),
      smearPx: draw.uniform(0, 1) < 0.15 ? draw.uniform(1, 4) : 0,
      quality: of(ranges.quality),
      saturation: of(ranges.saturation),
      balanced: of(ranges.balanced),
      tint: draw.normal(0, 0.04),
    },
    marks: { sigmaPx: of(ranges.markPx), measured: draw.uniform(0, 1) < 0.5 },
    pinXmm: draw.uniform(112, 140) + outMm + 20,
    draw,
  };
}

const OTHER_ALBEDO: Readonly<Record<OtherPaint, V>> = {
  yellow: [0.7, 0.52, 0.03],
  white: [0.72, 0.7, 0.66],
  blue: [0.05, 0.16, 0.5],
  green: [0.08, 0.42, 0.1],
};

function otherPaint(draw: Draw, what: OtherPaint): V {
  const [red, green, blue] = OTHER_ALBEDO[what];
  const some = () => Math.exp(draw.uniform(-0.15, 0.15));
  return [red * some(), green * some(), blue * some()];
}

function lightFrom(draw: Draw, ranges: Ranges, kind: SceneKind) {
  const warm = draw.uniform(...ranges.warmth);
  const glow = kind.is === 'confuser' && kind.what === 'tail-light glow';
  return {
    /** Red and blue of the light against its green. */
    tint: [Math.exp(warm), 1, Math.exp(-1.4 * warm)] as V,
    sun: draw.uniform(0, 1) < 0.4 ? 0 : draw.uniform(...ranges.sunned),
    sunFrom: [draw.uniform(-1, 1), draw.uniform(0.3, 1), draw.uniform(-1, 0.3)] as V,
    skyBlue: draw.uniform(0, 0.25),
    lamp: draw.uniform(0, 1) < 0.25 ? draw.uniform(0.4, 2.5) : 0,
    glow: glow ? draw.uniform(0.8, 4) : 0,
    glowFrom: [draw.uniform(-120, 160), draw.uniform(60, 240), draw.uniform(-260, 60)] as V,
  };
}
