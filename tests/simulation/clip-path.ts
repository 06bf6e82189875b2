/** What happens in a simulated clip: how far the brake is applied, and where the hand holds the camera, in every frame. */
import type { Draw } from '../../src/basics/random.ts';
import { type CameraPose, type P3, turned } from './clip-camera.ts';

export type Course = {
  /** Stroke of each application, mm. */
  readonly strokesMm: readonly number[];
  readonly restS: number;
  readonly heldS: number;
  /** From rest to nine tenths. */
  readonly applyS: number;
  readonly releaseS: number;
  readonly creepMmPerS: number;
  /** applied: the clip begins, or ends, with the brake applied. */
  readonly begins: 'released' | 'applied';
  readonly ends: 'released' | 'applied';
};

/** t: seconds; of each application the instants of begin, rest in held, letting go, rest in released. */
export type Travel = {
  readonly lastingS: number;
  readonly travelMm: (t: number) => number;
  readonly heldMm: (t: number) => number | null;
  readonly applications: readonly {
    readonly begin: number;
    readonly letGo: number;
    readonly strokeMm: number;
  }[];
};

/** Of an exponential that has done nine tenths after one unit of time. */
const NINETY = Math.log(10);

export function travelOf(course: Course): Travel {
  const { strokesMm, restS, heldS, applyS, releaseS, creepMmPerS, begins, ends } = course;
  const settleS = 3 * applyS;
  const backS = 3 * releaseS;
  const span = settleS + heldS + backS + restS;
  const first = begins === 'applied' ? -settleS - heldS / 2 : restS;
  const applications = strokesMm.map((strokeMm, i) => {
    const begin = first + i * span;
    return { begin, letGo: begin + settleS + heldS, strokeMm };
  });
  const last = applications.at(-1) ?? { begin: 0, letGo: restS };
  const lastingS = ends === 'applied' ? last.letGo - heldS / 4 : last.letGo + backS + restS;
  const out = (t: number, { begin, strokeMm }: (typeof applications)[number]) =>
    strokeMm * (1 - Math.exp((-NINETY * (t - begin)) / applyS)) +
    creepMmPerS * Math.max(0, t - begin - settleS);
  return {
    lastingS,
    applications,
    heldMm: (t) => {
      const on = applications.find(({ begin, letGo }) => t >= begin + settleS && t <= letGo);
      return on ? out(t, on) : null;
    },
    travelMm: (t) => {
      const on = applications.findLast(({ begin }) => t >= begin);
      if (!on) return 0;
      if (t <= on.letGo) return out(t, on);
      return out(on.letGo, on) * Math.exp((-NINETY * (t - on.letGo)) / releaseS);
    },
  };
}

/** How far a hand wanders, one standard deviation, and how long until it is elsewhere. */
export type Hand = { readonly moveMm: number; readonly turnRad: number; readonly lastingS: number };

/** Tremor of a held hand, about nine a second. Common practice, no source. */
const TREMOR = { perS: 9, moveMm: 0.15, turnRad: 4e-4 };

export function handPath(
  draw: Draw,
  from: CameraPose,
  times: readonly number[],
  hand: Hand,
): readonly CameraPose[] {
  const sizes = [hand.moveMm, hand.moveMm, hand.moveMm, hand.turnRad, hand.turnRad, hand.turnRad];
  const state = sizes.map((size) => draw.normal(0, size));
  const phases = sizes.map(() => draw.uniform(0, 2 * Math.PI));
  const still = hand.moveMm === 0;
  return times.map((t, i) => {
    const keep = i === 0 ? 1 : Math.exp(-(t - (times[i - 1] as number)) / hand.lastingS);
    for (const [k, size] of sizes.entries())
      state[k] = keep * (state[k] as number) + Math.sqrt(1 - keep * keep) * draw.normal(0, size);
    if (still) return from;
    const at = (k: number) =>
      (state[k] as number) +
      (k < 3 ? TREMOR.moveMm : TREMOR.turnRad) *
        Math.sin(2 * Math.PI * TREMOR.perS * t + (phases[k] as number));
    const move: P3 = [at(0), at(1), at(2)];
    return turned(from, [at(3), at(4), at(5)], move);
  });
}
