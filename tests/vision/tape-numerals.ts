/** Numerals of lines and arcs as a routing machine cuts them, drawn here so that no typeface is needed. */
import type { Point } from '../../src/vision/point.ts';

const arc = ([x, y]: Point, [rx, ry]: Point, fromDeg: number, toDeg: number): readonly Point[] =>
  Array.from({ length: 13 }, (_, i) => {
    const rad = ((fromDeg + ((toDeg - fromDeg) * i) / 12) * Math.PI) / 180;
    return [x + rx * Math.cos(rad), y + ry * Math.sin(rad)];
  });

/** One high, 0.6 wide, y downwards, the middle at 0, 0. */
const DIGITS: readonly (readonly (readonly Point[])[])[] = [
  [arc([0, 0], [0.28, 0.5], 0, 360)],
  [
    [
      [-0.16, -0.3],
      [0.04, -0.5],
      [0.04, 0.5],
    ],
  ],
  [[...arc([0, -0.24], [0.27, 0.26], 190, 390), [-0.28, 0.5], [0.28, 0.5]]],
  [[...arc([0, -0.25], [0.25, 0.25], 200, 450), ...arc([0, 0.23], [0.28, 0.27], 270, 520)]],
  [
    [
      [0.12, 0.5],
      [0.12, -0.5],
      [-0.3, 0.24],
      [0.3, 0.24],
    ],
  ],
  [[[0.24, -0.5], [-0.2, -0.5], [-0.24, -0.06], ...arc([0, 0.18], [0.28, 0.32], 220, 510)]],
  [arc([0, 0.2], [0.27, 0.3], 0, 360), arc([0.1, 0.16], [0.37, 0.66], 180, 285)],
  [
    [
      [-0.28, -0.5],
      [0.28, -0.5],
      [-0.08, 0.5],
    ],
  ],
  [arc([0, -0.26], [0.23, 0.24], 0, 360), arc([0, 0.24], [0.28, 0.26], 0, 360)],
  [arc([0, -0.2], [0.27, 0.3], 0, 360), arc([-0.1, -0.16], [0.37, 0.66], 0, 105)],
];
/** Of the height. */
const HALF_LINE = 0.08;
const PITCH = 0.78;

/** place: mm from the numeral's middle, to the right and down. */
export function isInked(text: string, place: Point, heightMm: number): boolean {
  const [x, y] = [place[0] / heightMm, place[1] / heightMm];
  if (text === '' || Math.abs(y) > 0.7 || Math.abs(x) > PITCH * text.length) return false;
  return [...text].some((digit, i) => {
    const middle = (i - (text.length - 1) / 2) * PITCH;
    return (DIGITS[Number(digit)] ?? []).some((line) =>
      line.some((to, k) => k > 0 && apartFrom(line[k - 1] as Point, to, [x - middle, y]) < HALF_LINE),
    );
  });
}

function apartFrom([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1);
  const part = Math.max(0, Math.min(1, along));
  return Math.hypot(x - ax - part * dx, y - ay - part * dy);
}
