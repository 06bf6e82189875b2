/**
 * The ends of pin and camshaft sought with tape and axis given, about as well as they are found where they are: so that pictures in which neither
 * is seen tell something too.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { MM_PER_INCH } from '../../src/basics/units.ts';
import { fitEllipse } from '../../src/vision/fit-ellipse.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { apart, dot, minus, type Point } from '../../src/vision/point.ts';
import { type SoughtEnds, seekEnds } from '../../src/vision/seek-ends.ts';

type Truth = {
  readonly number: number;
  readonly clevisPin: Point;
  readonly rim: readonly Point[];
  readonly tapeGraduations: readonly { readonly inches: number; readonly px: Point }[];
};

/** Of scale, of the ratio of the rim's axes, and of the axis: standard deviations. Those found are turned by up to 5 degrees where they are seen. */
const U_SCALE = 0.005;
const U_RATIO = 0.005;
const U_TURN_RAD = 0.02;

/** Null without a tape. */
export function endsGiven(gray: Gray, { number, clevisPin, rim, tapeGraduations }: Truth): SoughtEnds | null {
  const [low, high] = [tapeGraduations[0], tapeGraduations.at(-1)];
  const ellipse = fitEllipse(rim);
  if (!low || !high || !ellipse) return null;
  const draw = drawFrom(number);
  const lengthMm = MM_PER_INCH * (high.inches - low.inches);
  const pxPerMm = (apart(low.px, high.px) / lengthMm) * (1 + draw.normal(0, U_SCALE));
  const { centre, angleRad, longPx, shortPx } = ellipse;
  const square: Point = [-Math.sin(angleRad), Math.cos(angleRad)];
  const way = Math.sign(dot(square, minus(clevisPin, centre)));
  const turn = draw.normal(0, U_TURN_RAD);
  const [c, s] = [way * Math.cos(turn), way * Math.sin(turn)];
  const end: Point = [
    centre[0] + 500 * (c * square[0] - s * square[1]),
    centre[1] + 500 * (s * square[0] + c * square[1]),
  ];
  const ratio = shortPx / longPx + draw.normal(0, U_RATIO);
  return seekEnds(gray, { rim: [], axisPx: [centre, end], pxPerMm, ratio });
}
