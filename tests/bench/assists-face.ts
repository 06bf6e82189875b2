/**
 * Edges across the rod near the chamber face, as they are offered to be chosen from, on pictures with truth: how often, whether the one that the
 * hand meant is among them, how far off it is, and what that brings for a pair and for the stroke. Looks as in assists-outlines.ts, of numbers of
 * their own; flat scenes in pairs by assists_face_flat.py.
 */
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import { findFace } from '../../src/vision/assist-face.ts';
import { findRod } from '../../src/vision/assist-rod.ts';
import { dot, minus, type Point } from '../../src/vision/point.ts';
import { type EdgeAsked, edgeTable, pairTable } from './assists-face-tables.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { type Known, picturesOf } from './assists-pictures.ts';

/** Looked at while this was made: other looks, and flat scenes 0 to 159 of a forerunner of the script, and 2000 to 2159, judged before. Every fourth look has no tape. */
const LOOKS = [
  ...[1701, 1704, 1705, 1709, 1712, 1713, 1714, 1716, 1717, 1718],
  ...[1720, 1721, 1722, 1724, 1725, 1726, 1728, 1729, 1730],
];
const FLAT = { first: 2200, count: 140 };
const HAND_PX = 2;
const TAPE_PX = 0.3;
const ON_STROKE = 3;
/** Within it an edge is the one that was meant, or another one of the chamber. */
const SAME_PX = 1;

const px = z.tuple([z.number(), z.number()]).readonly();
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  tapeGraduations: z.array(z.object({ inches: z.number(), strokePx: z.array(px) })),
  /** Where the rod's middle line meets the chamber's edges; end: the one that a person means. Of a look the face alone is told. */
  edges: z.record(z.string(), px).optional(),
});
type Truth = z.infer<typeof truthSchema>;

export const faceStudy = { name: 'face', run: study };

function study(): string {
  const pictures = picturesOf('assists-face', 'assists_face_flat.py', truthSchema);
  const looks = pictures.looks(LOOKS).map((known) => ask('ray-traced looks', known));
  const flats = pictures.flats(FLAT).map((known) => ask('flat scenes', known));
  const pairs = flats.flatMap((each) => {
    const other = flats.find(({ number }) => number === each.number + 1);
    return each.number % 2 === 0 && other ? [[each, other] as const] : [];
  });
  return `${edgeTable([...looks, ...flats])}\n\n${pairTable(pairs)}`;
}

function ask(name: string, { picture, truth }: Known<Truth>): EdgeAsked {
  const { number, edges } = truth;
  const gray = grayOfFile(picture);
  const draw = drawFrom(37 * number + 5);
  const off = ([x, y]: Point, sigmaPx: number): Point => [
    x + draw.normal(0, sigmaPx),
    y + draw.normal(0, sigmaPx),
  ];
  const tape = truth.tapeGraduations
    .filter(({ inches }) => Number.isInteger(inches))
    .map(({ inches, strokePx }) => ({
      placePx: off(strokePx[ON_STROKE] ?? strokePx[0] ?? [0, 0], TAPE_PX),
      sigmaPx: TAPE_PX,
      readingMm: 25.4 * inches,
    }));
  const meantPx = edges?.end ?? truth.chamberFace;
  const [facePx, pinPx] = [off(meantPx, HAND_PX), off(truth.clevisPin, HAND_PX)];
  const rod = findRod(gray, { facePx, faceSigmaPx: HAND_PX, pinPx, tape });
  const [near, far] = rod.ok ? rod.value.marks : [];
  if (!near || !far) return { name, number, hasRod: false, tookMs: 0, reason: null, edges: [], handPx: 0 };
  const [dx, dy] = minus(far.placePx, near.placePx);
  const along: Point = [dx / Math.hypot(dx, dy), dy / Math.hypot(dx, dy)];
  const beside = (place: Point, truePx: Point) => dot(minus(place, truePx), along);
  const began = process.cpuUsage();
  const found = findFace(gray, { facePx, sigmaPx: HAND_PX, rod: [near, far], tape });
  const tookMs = process.cpuUsage(began).user / 1000;
  return {
    name,
    number,
    hasRod: true,
    tookMs,
    reason: found.ok ? null : found.failure.code,
    handPx: beside(facePx, meantPx),
    edges: (found.ok ? found.value.marks : []).map(({ placePx, sigmaPx }) => {
      const isNear = (truePx: Point) => Math.abs(beside(placePx, truePx)) < SAME_PX;
      const offPx = beside(placePx, meantPx);
      const isOther = Object.values(edges ?? {}).some(isNear);
      return { offPx, sigmaPx, is: isNear(meantPx) ? 'meant' : isOther ? 'chamber' : 'else' };
    }),
  };
}
