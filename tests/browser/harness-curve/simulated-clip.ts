/** Clip measurements from simulated pushes of the rod: invented brakes, noise with a seed. For the screen's tests alone. */
import { drawFrom } from '../../../src/basics/random.ts';
import type {
  Application,
  ClipMeasurement,
  CurvePoint,
  Uncertain,
} from '../../../src/measurement/clip-measurement.ts';

type Push = {
  readonly beginS: number;
  readonly riseS: number;
  readonly heldS: number;
  readonly fallS: number;
  readonly strokeMm: number;
};

type Wanted = {
  readonly lengthS: number;
  readonly framesPerSecond: number;
  readonly pushes: readonly Push[];
  readonly gaps: ClipMeasurement['gaps'];
  readonly arm: boolean;
  readonly U95Mm: number;
  readonly creepMmPerS: number;
  readonly warnings: ClipMeasurement['warnings'];
  readonly firstS?: number;
};

const NOISE_MM = 0.12;
const ARM_MM = 139.7;
const RELEASED_RAD = 1.93;

export function simulatedClip(wanted: Wanted): ClipMeasurement {
  const draw = drawFrom(20);
  const noise = () => draw.normal(0, 1);
  const { framesPerSecond, pushes, gaps, firstS = 0 } = wanted;
  const count = Math.round(wanted.lengthS * framesPerSecond);
  const unseen = (kind: string, i: number) =>
    gaps.some((gap) => gap.kind === kind && gap.from <= i && i <= gap.to);
  const curve = Array.from({ length: count }, (_, i): CurvePoint => {
    const timeS = i / framesPerSecond;
    const strokeMm = strokeAt(pushes, wanted.creepMmPerS, timeS);
    const speed = Math.abs(strokeAt(pushes, wanted.creepMmPerS, timeS + 0.02) - strokeMm) / 0.02;
    const u = NOISE_MM * (1 + speed / 60);
    const stroke = unseen('clevis-pin', i) ? null : { value: strokeMm + u * noise(), u };
    const angle = RELEASED_RAD - strokeMm / ARM_MM;
    const seen = wanted.arm && stroke && !unseen('camshaft-end', i);
    return {
      timeS: firstS + timeS,
      stroke,
      armAngleRad: seen ? { value: angle + 0.002 * noise(), u: 0.004 } : null,
    };
  });
  const applications = pushes.map((push) => applicationOf(push, wanted, count));
  const strokes = pushes.map(({ strokeMm }) => strokeMm);
  const square = curve.find(({ armAngleRad }) => armAngleRad && armAngleRad.value <= Math.PI / 2);
  return {
    curve,
    drawings: [],
    applications,
    pictured: strokes.indexOf(Math.max(...strokes)),
    longer: null,
    spreadMm: pushes.length > 1 ? uncertain(Math.max(...strokes) - Math.min(...strokes), 0.16) : null,
    square: square?.stroke ? { timeS: square.timeS, strokeMm: square.stroke } : null,
    stillScatter: 1.1,
    marked: [],
    gaps,
    warnings: wanted.warnings,
  };
}

function strokeAt(pushes: readonly Push[], creepMmPerS: number, timeS: number): number {
  const push = pushes.findLast(({ beginS }) => beginS <= timeS);
  if (!push) return 0;
  const { beginS, riseS, heldS, fallS, strokeMm } = push;
  const since = timeS - beginS;
  if (since < riseS) return strokeMm * (1 - Math.cos((Math.PI * since) / riseS)) * 0.5;
  if (since < riseS + heldS) return strokeMm + creepMmPerS * (since - riseS);
  const share = Math.min(1, (since - riseS - heldS) / fallS);
  return (strokeMm + creepMmPerS * heldS) * (1 - share) ** 2;
}

function applicationOf(
  { beginS, riseS, heldS, fallS, strokeMm }: Push,
  { framesPerSecond, U95Mm, creepMmPerS, pushes, lengthS }: Wanted,
  count: number,
): Application {
  const frame = (s: number) => Math.min(count - 1, Math.round(s * framesPerSecond));
  const before = pushes.findLast((push) => push.beginS < beginS);
  const releasedFrom = before ? before.beginS + before.riseS + before.heldS + before.fallS : 0;
  const releasedTo = pushes.find((push) => push.beginS > beginS)?.beginS ?? lengthS;
  const ends = [beginS, beginS + riseS, beginS + riseS + heldS, beginS + riseS + heldS + fallS] as const;
  const shown = frame(ends[3]) < count - 1;
  const begun = beginS < 0;
  const phases: Application['phases'] = [
    ...(begun
      ? []
      : ([
          { kind: 'released', from: frame(releasedFrom), to: frame(ends[0]) },
          { kind: 'applying', from: frame(ends[0]), to: frame(ends[1]) },
        ] as const)),
    { kind: 'held', from: Math.max(0, frame(ends[1])), to: frame(ends[2]) },
    ...(shown
      ? ([
          { kind: 'releasing', from: frame(ends[2]), to: frame(ends[3]) },
          { kind: 'released', from: frame(ends[3]), to: frame(releasedTo) },
        ] as const)
      : []),
  ];
  const uS = 0.3 / framesPerSecond;
  return {
    phases,
    strokeMm: {
      value: strokeMm,
      u: U95Mm / 1.96,
      U95: U95Mm,
      budget: [{ group: 'marks', u: U95Mm / 1.96 }],
    },
    toNinetyPercentS: begun ? null : uncertain((riseS * Math.acos(-0.8)) / Math.PI, uS),
    toFullS: begun ? null : uncertain(riseS, uS * 2),
    releaseS: shown ? uncertain(fallS, uS * 2) : null,
    creepMmPerS: heldS > 0.5 ? uncertain(creepMmPerS, 0.05) : null,
  };
}

function uncertain(value: number, u: number): Uncertain {
  return { value, u };
}

export const SIMULATED = {
  one: () =>
    simulatedClip({
      lengthS: 4,
      framesPerSecond: 30,
      pushes: [{ beginS: 0.9, riseS: 0.36, heldS: 1.5, fallS: 0.5, strokeMm: 44.4 }],
      gaps: [{ kind: 'clevis-pin', from: 52, to: 63 }],
      arm: true,
      U95Mm: 0.8,
      creepMmPerS: 0.3,
      warnings: [],
    }),
  three: () =>
    simulatedClip({
      lengthS: 12,
      framesPerSecond: 30,
      pushes: [
        { beginS: 1.2, riseS: 0.4, heldS: 1.7, fallS: 0.6, strokeMm: 56.8 },
        { beginS: 5, riseS: 0.5, heldS: 1.5, fallS: 0.6, strokeMm: 57.6 },
        { beginS: 8.8, riseS: 0.9, heldS: 2.2, fallS: 0.6, strokeMm: 55.4 },
      ],
      gaps: [
        { kind: 'clevis-pin', from: 40, to: 43 },
        { kind: 'clevis-pin', from: 171, to: 182 },
        { kind: 'camshaft-end', from: 250, to: 262 },
      ],
      arm: true,
      U95Mm: 0.9,
      creepMmPerS: 0,
      warnings: [
        { code: 'clip/applications-differ', spreadMm: 2.2 },
        { code: 'clip/picture-warps', stillScatter: 2.3 },
      ],
    }),
  /** The clip begins with the brake applied. */
  begun: () =>
    simulatedClip({
      lengthS: 4,
      framesPerSecond: 30,
      pushes: [{ beginS: -1, riseS: 0.4, heldS: 2.4, fallS: 0.5, strokeMm: 41 }],
      gaps: [],
      arm: true,
      U95Mm: 0.8,
      creepMmPerS: 0,
      warnings: [],
    }),
  /** The clip ends while the brake is held; no camshaft end was marked. */
  slow: () =>
    simulatedClip({
      lengthS: 1.5,
      framesPerSecond: 240,
      firstS: 12,
      pushes: [{ beginS: 0.4, riseS: 0.3, heldS: 2, fallS: 0.5, strokeMm: 50.2 }],
      gaps: [{ kind: 'clevis-pin', from: 110, to: 140 }],
      arm: false,
      U95Mm: 1.4,
      creepMmPerS: 0.8,
      warnings: [{ code: 'clip/clock-doubtful', framesPerSecond: 240 }],
    }),
} as const;
