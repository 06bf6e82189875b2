/** The solids of a painted scene: rod, chamber, what is about them, and what could be taken for paint. */
import type { SceneDraw } from './assists-paint-draws.ts';
import { type Noise, noiseFrom } from './assists-paint-noise.ts';
import { bar, bent, flat, type Solid, type Surface, type V } from './assists-paint-solids.ts';

const dull = (albedo: V, gloss = 0.04): Surface => ({ albedo, mirror: 0, gloss, narrow: 12 });
const mix = (a: V, b: V, f: number): V => [
  a[0] + (b[0] - a[0]) * f,
  a[1] + (b[1] - a[1]) * f,
  a[2] + (b[2] - a[2]) * f,
];
const step = (low: number, high: number, x: number) => {
  const f = Math.min(1, Math.max(0, (x - low) / Math.max(1e-6, high - low)));
  return f * f * (3 - 2 * f);
};
const DUST: V = [0.3, 0.25, 0.19];

export type SceneSolids = {
  readonly solids: readonly Solid[];
  readonly rod: Solid;
  /** Whether a point of the rod has paint on it. */
  readonly painted: (at: V) => boolean;
};

export function sceneSolids(scene: SceneDraw): SceneSolids {
  const noise = noiseFrom(scene.seed);
  const R = scene.rodRadiusMm;
  const rodEndMm = scene.pinXmm - 40;
  const rod = bar([-14, 0, 0], [rodEndMm, 0, 0], R, rodSurface(scene, noise));
  const solids = [
    rod,
    bar([rodEndMm, 0, 0], [rodEndMm + 26, 0, 0], 13, rusty(scene, noise, 0.5)),
    ...chamber(scene, noise),
    ...surroundings(scene, noise),
    ...company(scene, noise),
  ];
  return { solids, rod, painted: (at) => scene.band !== null && paintGone(scene.band, at, noise) < 0.5 };
}

/** Metal, rust on it, grease, paint on it, dirt on all. */
function rodSurface(scene: SceneDraw, noise: Noise): Solid['surface'] {
  const { band, draw, company: what } = scene;
  const [light, middle, dark] = scene.rusts;
  const threadsFromMm = scene.pinXmm - 40 - draw.uniform(15, 35);
  const ringMm = what === 'rust ring at the face' ? draw.uniform(3, 16) : 0;
  const dirtMm = what === 'orange dirt' ? draw.uniform(8, 60) : 0;
  const clay: V = [draw.uniform(0.3, 0.5), draw.uniform(0.16, 0.24), draw.uniform(0.06, 0.12)];
  return (at) => {
    const [x] = at;
    const along: V = [at[0] / 3, at[1], at[2]];
    const grain = noise(along, scene.grainMm);
    let rust = step(1 - scene.rusted - 0.08, 1 - scene.rusted + 0.08, grain);
    if (ringMm > 0) rust = Math.max(rust, 1 - step(ringMm * 0.6, ringMm * 1.2, x + 8 * (noise(at, 7) - 0.5)));
    const rustColour = mix(mix(dark, middle, noise(at, 4)), light, step(0.5, 0.9, noise(at, 9)));
    const level = scene.metal * (0.75 + 0.5 * noise(along, 5));
    let albedo = mix([level, level * 0.95, level * 0.88], rustColour, rust);
    let [mirror, gloss] = [0.35 * (1 - rust), 0.25 * (1 - rust)];
    if (x > threadsFromMm) albedo = mix(albedo, [0.05, 0.045, 0.04], 0.5 + 0.5 * Math.sin(4 * x));
    if (band) {
      const bare = paintGone(band, at, noise);
      const colour = mix(mix(band.albedo, [0.5, 0.45, 0.42], band.faded), DUST, band.dusty * noise(at, 11));
      albedo = mix(colour, albedo, bare);
      mirror *= bare;
      gloss = gloss * bare + 0.06 * (1 - bare);
    }
    if (dirtMm > 0) {
      const caked = step(0.35, 0.6, noise(at, 9) + 0.25 * (1 - x / dirtMm));
      albedo = mix(albedo, clay, 0.9 * caked);
      mirror *= 1 - caked;
    }
    const greasy = step(0.72, 0.85, noise([x + 500, at[1], at[2]], 10));
    return { albedo: mix(albedo, [0.03, 0.026, 0.02], 0.8 * greasy), mirror, gloss, narrow: 30 };
  };
}

/** 0 where paint lies, 1 where none does. */
function paintGone(band: NonNullable<SceneDraw['band']>, at: V, noise: Noise): number {
  const wavy = band.edgeMm * (noise([0, 2 * at[1], 2 * at[2]], 6) - 0.5) * 2;
  const outer = step(-0.25, 0.25, at[0] - band.outMm - wavy);
  const inner = step(-0.25, 0.25, band.outMm - band.lengthMm - at[0] + wavy);
  const lost =
    band.worn > 0
      ? step(1 - band.worn - 0.05, 1 - band.worn + 0.05, noise([at[0], at[1] + 90, at[2]], 4))
      : 0;
  return Math.max(outer, inner, lost);
}

function rusty(scene: SceneDraw, noise: Noise, share: number): Solid['surface'] {
  const [light, middle, dark] = scene.rusts;
  const paint: V = [scene.housing, scene.housing * 0.97, scene.housing * 0.92];
  return (at) => {
    const rust = step(1 - share - 0.06, 1 - share + 0.06, noise(at, 20));
    const colour = mix(mix(dark, middle, noise(at, 5)), light, noise(at, 11));
    return dull(mix(mix(paint, DUST, 0.5 * noise(at, 25)), colour, rust), 0.08);
  };
}

function chamber(scene: SceneDraw, noise: Noise): Solid[] {
  const { draw, rodRadiusMm: R } = scene;
  const holeMm = R + draw.uniform(0.2, 4);
  const plain = rusty(scene, noise, scene.rusted * 0.7);
  const sprayed = scene.company === 'overspray on the chamber';
  const sprayMm = draw.uniform(20, 55);
  const spray: Solid['surface'] = (at) => {
    const under = plain(at);
    if (!sprayed) return under;
    const there = 1 - step(0.75, 1.1, Math.hypot(at[1], at[2]) / sprayMm + 0.5 * (noise(at, 14) - 0.5));
    return { ...under, albedo: mix(under.albedo, scene.signal, 0.9 * there) };
  };
  const round = ([, y, z]: V) => Math.sqrt(y * y + z * z);
  return [
    flat([0, 0, 0], [1, 0, 0], (at) => round(at) > holeMm && round(at) < 62, spray),
    flat(
      [-12, 0, 0],
      [1, 0, 0],
      (at) => round(at) < holeMm + 6,
      () => dull([0.012, 0.011, 0.01]),
    ),
    bar([-60, 0, 0], [-28, 0, 0], 95, plain),
    bar([-28.5, 0, 0], [-0.3, 0, 0], 61.9, plain),
    bar([0, 48, 0], [16, 48, 0], 9, rusty(scene, noise, 0.6)),
  ];
}

/** Bracket plates behind, and a wall of dark things and sky far behind them. */
function surroundings(scene: SceneDraw, noise: Noise): Solid[] {
  const { draw } = scene;
  const [edge, back] = [draw.uniform(-40, 60), draw.uniform(40, 90)];
  const taped = scene.company === 'warning tape';
  const [stripeMm, turned] = [draw.uniform(12, 30), draw.uniform(-0.9, 0.9)];
  const tapeY = draw.uniform(-8, 30);
  const plain = rusty(scene, noise, 0.4);
  const marked: Solid['surface'] = (at) => {
    if (!taped || Math.abs(at[1] - tapeY) > 26) return plain(at);
    const stripe = Math.sin((Math.PI * (at[0] + turned * at[1])) / stripeMm) > 0;
    return dull(stripe ? scene.signal : [0.65, 0.64, 0.6], 0.1);
  };
  const reach = taped ? 140 : draw.uniform(10, 140);
  return [
    flat([0, 0, back], [0, 0, -1], ([x, y]) => x > -150 && x < reach && y < edge + 40 && y > -160, marked),
    flat(
      [0, 0, 420],
      [0, 0, -1],
      () => true,
      (at) => {
        const there = noise([at[0], at[1], scene.seed], 160);
        const bright = draw0(scene) && at[1] > 0 ? 0.75 : 0.04 + 0.2 * there;
        return dull([bright, bright * 0.98, bright * (draw0(scene) ? 1.05 : 0.93)]);
      },
    ),
  ];
}

const draw0 = (scene: SceneDraw) => scene.seed % 3 === 0;

function company(scene: SceneDraw, noise: Noise): Solid[] {
  const { draw, signal, rodRadiusMm: R } = scene;
  const side = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const cloth =
    (colour: V): Solid['surface'] =>
    (at) =>
      dull(mix(colour, [0.12, 0.1, 0.08], 0.5 * noise(at, 12)), 0.05);
  const rubber: Solid['surface'] = (at) => dull(mix(signal, DUST, 0.35 * noise(at, 15)), 0.3);
  switch (scene.kind.is === 'hidden' ? 'hidden' : scene.company) {
    case 'orange hose behind': {
      const [x, lean, radius] = [draw.uniform(2, 40), draw.uniform(-40, 40), draw.uniform(5, 13)];
      const z = R + radius + draw.uniform(1, 20);
      return [
        bent(
          [
            [x - lean, -120, z],
            [x, 0, z],
            [x + lean, 120, z],
          ],
          radius,
          rubber,
        ),
      ];
    }
    case 'orange hose beside': {
      const radius = draw.uniform(5, 11);
      const y = side * (R + radius + draw.uniform(3, 22));
      return [
        bent(
          [
            [-10, y * 1.3, 8],
            [25, y, 0],
            [60, y * 1.1, 4],
            [120, y * 1.8, 15],
          ],
          radius,
          rubber,
        ),
      ];
    }
    case 'orange hose across': {
      const [x, lean, radius] = [draw.uniform(14, 45), draw.uniform(8, 60) * side, draw.uniform(4, 9)];
      const z = -(R + radius + draw.uniform(0, 10));
      return [
        bent(
          [
            [x - lean, -110, z],
            [x, 0, z],
            [x + lean, 110, z],
          ],
          radius,
          rubber,
        ),
      ];
    }
    case 'reflector': {
      const [x, y, radius] = [draw.uniform(-5, 40), side * draw.uniform(R + 4, 40), draw.uniform(12, 32)];
      const z = draw.uniform(12, 38);
      return [
        bar([x, y, z], [x, y, z + 4], radius, () => ({
          albedo: signal,
          mirror: 0.1,
          gloss: 0.8,
          narrow: 60,
        })),
      ];
    }
    case 'brass fitting': {
      const [x, y] = [draw.uniform(0, 14), side * draw.uniform(R + 9, R + 20)];
      const brass: V = [0.62, draw.uniform(0.36, 0.46), draw.uniform(0.1, 0.2)];
      const shine: Solid['surface'] = () => ({ albedo: brass, mirror: 0.3, gloss: 0.6, narrow: 40 });
      return [bar([x, y, -4], [x + 16, y, -4], 8, shine), bar([x + 16, y, -4], [x + 34, y, -4], 5.5, shine)];
    }
    case 'glove beside':
      return fingers(scene, cloth(signal), side * draw.uniform(R + 12, R + 24), draw.uniform(15, 45), 0);
    case 'glove across':
      return fingers(scene, cloth(signal), -2, draw.uniform(26, 50), -(R + 10));
    case 'hidden':
      return fingers(
        scene,
        cloth(draw.uniform(0, 1) < 0.5 ? [0.07, 0.07, 0.07] : [0.35, 0.25, 0.14]),
        0,
        0,
        -(R + 10),
      );
    default:
      return [];
  }
}

/** Three fingers side by side along the rod from x on, pointing across it. */
function fingers(scene: SceneDraw, cloth: Solid['surface'], yMm: number, xMm: number, zMm: number): Solid[] {
  const { draw } = scene;
  const up = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const from = yMm === 0 || Math.abs(yMm) < 5 ? -up * draw.uniform(12, 20) : yMm;
  const reach = yMm === 0 || Math.abs(yMm) < 5 ? up * 110 : Math.sign(yMm) * 110;
  return [0, 1, 2].map((i) => {
    const x = xMm + 9 + 19 * i;
    const lean = draw.uniform(-16, 16);
    return bent(
      [
        [x, from, zMm],
        [x + lean, from + reach, zMm + 10],
      ],
      draw.uniform(9.5, 11.5),
      cloth,
    );
  });
}
