/**
 * Where the strokes of whole inches or centimetres lie along a blade's edge, roughly: the start for measuring each of them.
 *
 * Model    s along the edge, t over the blade; a stroke of value v runs at s(v) + shear t, s(v) a projective scale (projective-scale.ts)
 *          search: the places of both named graduations within reach of their marks, the bow of the scale between them and the
 *          shear, so that the strokes of whole ones, which are the longest, are darkest against what lies beside them
 * Assumes  dark strokes on a lighter blade, those of whole ones the longest
 * Fails    nothing dark enough there, another place nearly as dark, strokes of whole ones that are no longer than those beside them: a
 *          wrong reading lets them fall on shorter strokes, which are dark near the edge as well
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { AssistQuestion, FailureOf } from './assist-sight.ts';
import { type Frame, placeIn } from './assist-tape-edge.ts';
import { median } from './biweight.ts';
import type { Gray } from './gray.ts';
import { levelAt } from './level-at.ts';
import { dot, minus } from './point.ts';
import { type ProjectiveScale, placeOf, scaleThrough } from './projective-scale.ts';

export type NamedGraduation = Extract<AssistQuestion, { readonly of: 'tape' }>['named'][0];
export type LatticeFailure = FailureOf<'tape'>;

export type Family = {
  readonly majorMm: number;
  /** What is found and handed on. */
  readonly outMm: number;
  /** Rows where the strokes of whole ones still run and shorter ones have ended. */
  readonly endMm: readonly [number, number];
};

/** How far over the blade the long strokes are looked at. Common practice, no source. */
const LONG_MM = 7;
/** What is compared with a stroke lies so far beside it. */
const BESIDE_MM = 1.4;
/** Darkness over that of the darkest. */
const LEAST_CONTRAST = 0.35;
/** Another place of the lattice that is nearly as dark. */
const RIVAL = 0.8;
const MOST_RIVALS = 4;
/** Share of whole ones whose strokes must be seen where shorter ones have ended, so much darker than halves beside them. */
const LEAST_LONGEST = 0.6;
const LONGER = 1.3;
const LEAST_LONG = 0.1;
/** Over the length between the named: a tape seen 35 degrees off square from 0.7 m bows by 0.034. */
const MOST_BOW = 0.07;
const MOST_SHEAR = 0.24;
const SHEAR_STEP = 0.08;

export type Sought = {
  readonly low: NamedGraduation;
  readonly high: NamedGraduation;
  readonly lengthPx: number;
  readonly pxPerMm: number;
  readonly family: Family;
};
export type Rough = { readonly scale: ProjectiveScale; readonly shear: number };
/** Places of both named graduations and how far the scale's middle lies from the middle between them, px. */
type Ends = { readonly low: number; readonly high: number; readonly bow: number };
type Tried = Rough & { readonly contrast: number; readonly ends: Ends };

export function searchLattice(gray: Gray, frame: Frame, sought: Sought): Result<Rough, LatticeFailure> {
  const { low, high, lengthPx, pxPerMm, family } = sought;
  const grain = Math.max(1, pxPerMm / 2.2);
  const along = ({ placePx }: NamedGraduation) => dot(minus(placePx, frame.origin), frame.along);
  const reach = ({ sigmaPx }: NamedGraduation) =>
    Math.min(0.3 * family.majorMm * pxPerMm, Math.max(0.09 * family.majorMm * pxPerMm, 3.5 * sigmaPx));
  const majors: number[] = [];
  for (
    let k = Math.ceil(low.readingMm / family.majorMm - 1e-6);
    k * family.majorMm <= high.readingMm + 1e-6;
    k++
  )
    majors.push(k * family.majorMm);
  const room = 10 * pxPerMm;
  const at = (shear: number, ends: Iterable<Ends>): Tried[] => {
    const darkness = darknessAlong(gray, frame, {
      from: along(low) - room,
      to: along(high) + room,
      shear,
      rowsPx: [1.5, LONG_MM * pxPerMm],
      besidePx: BESIDE_MM * pxPerMm,
      byLighter: false,
    });
    return tryAll(darkness, majors, [low.readingMm, high.readingMm], shear, ends);
  };
  const first = steps(-MOST_SHEAR, MOST_SHEAR, SHEAR_STEP).flatMap((shear) =>
    at(shear, endsAbout([along(low), reach(low)], [along(high), reach(high)], MOST_BOW * lengthPx, grain)),
  );
  const rough = darkest(first);
  const second = rough
    ? steps(rough.shear - SHEAR_STEP / 2, rough.shear + SHEAR_STEP / 2, SHEAR_STEP / 2).flatMap((shear) =>
        at(
          shear,
          endsAbout([rough.ends.low, grain], [rough.ends.high, grain], grain, grain / 2, rough.ends.bow),
        ),
      )
    : [];
  const best = darkest([...second, ...(rough ? [rough] : [])]);
  if (!best || best.contrast < LEAST_CONTRAST)
    return fail({ code: 'tape/no-lattice', contrast: best?.contrast ?? 0 });
  const apart = (family.majorMm / 20) * pxPerMm + 1.5 * grain;
  // Halfway along the strokes: another slant through the same ones is no other lattice.
  const halfway = ({ scale, shear }: Rough, value: number) =>
    placeOf(scale, value) + shear * (LONG_MM / 2) * pxPerMm;
  const away = (one: Rough, other: Rough) =>
    median(majors.map((value) => Math.abs(halfway(one, value) - halfway(other, value))));
  const rivals: Tried[] = [];
  for (const each of [...first].sort((one, other) => other.contrast - one.contrast)) {
    if (each.contrast < RIVAL * best.contrast || rivals.length >= MOST_RIVALS) break;
    if ([best, ...rivals].every((other) => away(each, other) > apart)) rivals.push(each);
  }
  // Shorter strokes are nearly as dark as those of whole ones; but they end.
  const shares = [best, ...rivals].map((each) => longestShare(gray, frame, each, majors, sought));
  const long = [best, ...rivals].filter((_, i) => (shares[i] as number) >= LEAST_LONGEST);
  const [only, another] = long;
  if (!only) return fail({ code: 'tape/no-lattice', contrast: Math.max(...shares) });
  return another ? fail({ code: 'tape/two-ways' }) : ok(only);
}

const darkest = (tried: readonly Tried[]): Tried | null =>
  tried.reduce<Tried | null>((best, each) => (best && best.contrast >= each.contrast ? best : each), null);

const steps = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

function* endsAbout(
  [low, lowReach]: readonly [number, number],
  [high, highReach]: readonly [number, number],
  mostBow: number,
  grain: number,
  bowAt = 0,
): Generator<Ends> {
  for (const a of around(low, lowReach, grain))
    for (const b of around(high, highReach, grain))
      for (const bow of around(bowAt, mostBow, 1.5 * grain)) yield { low: a, high: b, bow };
}

/** Those that are dark enough to be compared. */
function tryAll(
  darkness: (s: number) => number,
  majors: readonly number[],
  [fromMm, toMm]: readonly [number, number],
  shear: number,
  all: Iterable<Ends>,
): Tried[] {
  const tried: Tried[] = [];
  for (const ends of all) {
    const middle = (ends.low + ends.high) / 2 + ends.bow;
    const scale = scaleThrough(fromMm, toMm, [ends.low, middle, ends.high]);
    let sum = 0;
    for (const value of majors) sum += Math.min(1.5, darkness(placeOf(scale, value)));
    const contrast = sum / majors.length;
    if (contrast > 0.7 * LEAST_CONTRAST) tried.push({ scale, shear, contrast, ends });
  }
  return tried;
}

/** Share of whole ones that run on where shorter strokes have ended. */
function longestShare(
  gray: Gray,
  frame: Frame,
  { scale, shear }: Rough,
  majors: readonly number[],
  { pxPerMm, family }: Sought,
): number {
  const ends = [majors[0] ?? 0, majors.at(-1) ?? 0].map((value) => placeOf(scale, value)) as [number, number];
  const rowsPx = family.endMm.map((mm) => mm * pxPerMm) as [number, number];
  const room = 3 * pxPerMm;
  const darkness = darknessAlong(gray, frame, {
    from: ends[0] - room,
    to: ends[1] + room,
    shear,
    rowsPx,
    besidePx: BESIDE_MM * pxPerMm,
    byLighter: true,
  });
  const near = (value: number) =>
    Math.max(...[-0.6, -0.3, 0, 0.3, 0.6].map((mm) => darkness(placeOf(scale, value) + mm * pxPerMm)));
  const long = majors.filter((value) => {
    const beside = [-0.5, 0.25, 0.5].map((part) => near(value + part * family.majorMm));
    return near(value) > Math.max(LEAST_LONG, LONGER * Math.max(...beside));
  });
  return long.length / majors.length;
}

const around = (middle: number, reach: number, step: number): number[] => {
  const n = Math.max(1, Math.ceil(reach / step));
  return Array.from({ length: 2 * n + 1 }, (_, i) => middle + ((i - n) * reach) / n);
};

type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly shear: number;
  readonly rowsPx: readonly [number, number];
  readonly besidePx: number;
  /** A numeral may stand on one side: then the other counts. */
  readonly byLighter: boolean;
};

/** How much darker it is there than on both sides, over the depth of long strokes, in shares of what is usual. */
function darknessAlong(
  gray: Gray,
  frame: Frame,
  { from, to, shear, rowsPx: [top, low], byLighter, besidePx }: Stretch,
): (s: number) => number {
  const step = Math.max(0.5, besidePx / 6);
  const count = Math.ceil((to - from) / step) + 1;
  const rows = Math.max(4, Math.min(14, Math.round(low - top)));
  const level = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = 0;
    for (let row = 0; row < rows; row++) {
      const t = top + ((low - top) * (row + 0.5)) / rows;
      const [x, y] = placeIn(frame, from + i * step + shear * t, t);
      sum += levelAt(gray, x, y);
    }
    level[i] = sum / rows;
  }
  const off = Math.max(1, Math.round(besidePx / step));
  const dark = level.map((here, i) => {
    const [before, after] = [
      level[Math.max(0, i - off)] as number,
      level[Math.min(count - 1, i + off)] as number,
    ];
    return (byLighter ? Math.max(before, after) : Math.min(before, after)) - here;
  });
  const strongest = [...dark].sort((a, b) => b - a).slice(0, Math.max(3, Math.round(count / 60)));
  const unit = Math.max(6, median(strongest));
  return (s) => {
    const at = (s - from) / step;
    const i = Math.floor(at);
    if (i < 0 || i + 1 >= count) return 0;
    const [a, b] = [dark[i] as number, dark[i + 1] as number];
    return Math.max(0, a + (at - i) * (b - a)) / unit;
  };
}
