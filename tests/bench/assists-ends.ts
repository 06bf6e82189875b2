/**
 * The same end in two pictures: how far the mark of the second is off against that of the first, by hand and by the assist; and what that
 * is worth in stroke. Beside it, how well an end's middle is found in one picture. Pictures: assists-ends-kept.ts.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { findEnd } from '../../src/vision/assist-end.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { sameEnd } from '../../src/vision/same-end.ts';
import { type EndPair, endPairs, grayOfShot, type Range, type Shot } from './assists-ends-kept.ts';
import { type PairDrawn, pairTable } from './assists-ends-tables.ts';
import { type Drawn, endTable } from './assists-marks-tables.ts';

/** Numbers below 2000 (ray-traced) and 200 (flat) were looked at while the assists were made, or judged before. */
const RAY_TRACED: Range = { first: 2000, count: 32 };
const FLAT: Range = { first: 200, count: 33 };
const HANDS = [1, 3];

export const endsStudy = { name: 'ends', run: study };

function study(): string {
  return [
    { name: 'ray-traced ends', pairs: endPairs.rayTraced(RAY_TRACED) },
    { name: 'flat ends', pairs: endPairs.flat(FLAT) },
  ]
    .map(({ name, pairs }) => {
      const drawn: PairDrawn[] = [];
      const alone: Drawn[] = [];
      for (const pair of pairs) {
        const grays = pair.shots.map(grayOfShot) as [Gray, Gray];
        for (const handPx of HANDS) {
          drawn.push(pairDrawn(pair, grays, handPx));
          for (const i of [0, 1] as const)
            alone.push(aloneDrawn(pair.shots[i], grays[i], handPx, pair.number + i));
        }
      }
      const pictures = new Set(pairs.map(({ number }) => number)).size * 2;
      return `**${name}**, ${pictures} pictures, one hand of each sigma\n\nThe same end in both:\n\n${pairTable(drawn)}\n\nThe middle in each picture alone:\n\n${endTable(alone)}`;
    })
    .join('\n\n');
}

const scattered = ([x, y]: Point, sigmaPx: number, draw: ReturnType<typeof drawFrom>): Point => [
  x + draw.normal(0, sigmaPx),
  y + draw.normal(0, sigmaPx),
];

/** Marks in the coordinates of the cut-out; both pictures are marked by hands, the released one's is kept. */
export function pairDrawn(
  { number, kind, shots }: EndPair,
  grays: readonly [Gray, Gray],
  handPx: number,
): PairDrawn {
  const draw = drawFrom(1000 * number + 10 * handPx + (kind === 'clevis-pin' ? 0 : 5));
  const [known, rough] = shots.map((shot) => {
    const { face, pin, camshaft } = shot.marksPx;
    const own = kind === 'clevis-pin' ? pin : camshaft;
    const cut = ([x, y]: Point): Point => [x - own[0] + shot.placePx[0], y - own[1] + shot.placePx[1]];
    const mark = (place: Point) => scattered(cut(place), handPx, draw);
    return { facePx: mark(face), pinPx: mark(pin), camshaftPx: mark(camshaft) };
  }) as [Marks, Marks];
  const markOf = ({ pinPx, camshaftPx }: Marks) => (kind === 'clevis-pin' ? pinPx : camshaftPx);
  const found = sameEnd(grays[0], grays[1], { of: kind, known, rough, roughSigmaPx: handPx });
  // What the first mark is off by goes along: the point of the metal is that, as the part is turned and larger there.
  const should = carried(shots, markOf(known), turnOf(shots, kind));
  const hand = markOf(rough);
  const [released, applied] = shots;
  const along = unit(applied.marksPx.face, applied.marksPx.pin);
  const handFrom = released.placePx;
  const byHand: Point = [
    hand[0] - applied.placePx[0] - (markOf(known)[0] - handFrom[0]),
    hand[1] - applied.placePx[1] - (markOf(known)[1] - handFrom[1]),
  ];
  const byAssist: Point | null = found.ok
    ? [found.value.placePx[0] - should[0], found.value.placePx[1] - should[1]]
    : null;
  return {
    kind,
    handPx,
    errors: byAssist,
    sigmaPx: found.ok ? found.value.sigmaPx : 0,
    byHandMm: Math.abs(byHand[0] * along[0] + byHand[1] * along[1]) / applied.pxPerMm,
    byAssistMm: byAssist && Math.abs(byAssist[0] * along[0] + byAssist[1] * along[1]) / applied.pxPerMm,
  };
}

type Marks = { readonly facePx: Point; readonly pinPx: Point; readonly camshaftPx: Point };

function unit(from: Point, to: Point): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

function turnOf([one, other]: EndPair['shots'], kind: EndPair['kind']): number {
  const way = ({ marksPx: { face, pin, camshaft } }: Shot) => {
    const from = kind === 'clevis-pin' ? face : camshaft;
    return Math.atan2(pin[1] - from[1], pin[0] - from[0]);
  };
  return way(other) - way(one);
}

function carried([one, other]: EndPair['shots'], mark: Point, turnRad: number): Point {
  const larger = other.pxPerMm / one.pxPerMm;
  const [c, s] = [larger * Math.cos(turnRad), larger * Math.sin(turnRad)];
  const [dx, dy] = [mark[0] - one.placePx[0], mark[1] - one.placePx[1]];
  return [other.placePx[0] + c * dx - s * dy, other.placePx[1] + s * dx + c * dy];
}

function aloneDrawn(shot: Shot, gray: Gray, sigmaPx: number, seed: number): Drawn {
  const { kind, placePx: at, lengthPx } = shot;
  const placePx = scattered(
    at,
    sigmaPx,
    drawFrom(77 * seed + 10 * sigmaPx + (kind === 'clevis-pin' ? 0 : 5)),
  );
  const found = findEnd(gray, { of: kind, placePx, sigmaPx, lengthPx });
  const mark = found.ok ? (found.value.marks[0] ?? null) : null;
  return {
    kind,
    handPx: sigmaPx,
    errors: mark ? [mark.placePx[0] - at[0], mark.placePx[1] - at[1]] : null,
    sigmaPx: mark?.sigmaPx ?? 0,
  };
}
