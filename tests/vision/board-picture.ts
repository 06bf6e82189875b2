/**
 * Gray pictures of the calibration board with known corners, made without any code of the finder: ink on paper on a cluttered
 * ground, seen through a lens with distortion; light, blur, tone and noise follow as in a camera, in this order.
 */
import { drawFrom } from '../../src/basics/random.ts';
import {
  BOARD_MARKER_MM,
  BOARD_MARKERS,
  isBlackSquare,
  SQUARE_MM,
} from '../../src/references/calibration-board.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { BOARD_MIDDLE_MM, type Hold, type Lens } from '../adjustment/board-scene.ts';
import { blur } from './blur.ts';

export type BoardPictureOptions = {
  readonly seed: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly lens: Lens;
  readonly hold: Hold;
  readonly blurPx: number;
  /** Of 255 levels. */
  readonly noise: number;
  /** Light falls by this share from one side of the picture to the other. */
  readonly lightFall: number;
  /** How far ink runs out over every edge. */
  readonly inkMm: number;
};

const PAPER = 0.8;
const INK = 0.04;
const MARGIN_MM = 12;
const FINE = 4;
const LAST = FINE - 1;

type Pair = readonly [number, number];

export function boardPicture(options: BoardPictureOptions): Gray {
  const { widthPx, heightPx, noise, lightFall } = options;
  const draw = drawFrom(options.seed);
  const onBoard = boardPlaceOf(options);
  const surface = surfaceOf(options);
  // Board coordinates at the pixels' corners; inside a pixel they change evenly enough.
  const wide = widthPx + 1;
  const grid = new Float64Array(2 * wide * (heightPx + 1));
  for (let at = 0; at < grid.length / 2; at++) {
    const [x, y] = onBoard([at % wide, Math.floor(at / wide)]);
    grid[2 * at] = x;
    grid[2 * at + 1] = y;
  }
  const light = new Float64Array(widthPx * heightPx);
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++) {
      const above = 2 * (y * wide + x);
      const below = above + 2 * wide;
      const place = (k: 0 | 1, right: number, down: number) =>
        ((grid[above + k] as number) * (1 - right) + (grid[above + 2 + k] as number) * right) * (1 - down) +
        ((grid[below + k] as number) * (1 - right) + (grid[below + 2 + k] as number) * right) * down;
      const shareAt = (i: number, j: number) => {
        const right = (i + 0.5) / FINE;
        const down = (j + 0.5) / FINE;
        return surface(place(0, right, down), place(1, right, down));
      };
      // A cell is larger than a pixel: where its corners agree there is no edge in it.
      const corner = shareAt(0, 0);
      const plain =
        corner === shareAt(LAST, 0) && corner === shareAt(0, LAST) && corner === shareAt(LAST, LAST);
      let sum = 0;
      for (let j = 0; j < FINE && !plain; j++) for (let i = 0; i < FINE; i++) sum += shareAt(i, j);
      const share = plain ? corner : sum / FINE ** 2;
      light[y * widthPx + x] = share * (1 - lightFall * (x / widthPx));
    }
  const blurred = blur(light, widthPx, heightPx, options.blurPx);
  const values = Uint8Array.from(blurred, (value) =>
    Math.max(0, Math.min(255, Math.round(255 * coded(value) + draw.normal(0, noise)))),
  );
  return { widthPx, heightPx, values };
}

/** Where the ray through a place of the picture meets the board: mm from the top left of the chessboard. */
function boardPlaceOf({ lens, hold }: BoardPictureOptions): (place: Pair) => Pair {
  const o = hold([0, 0, 0]);
  const along = (point: readonly [number, number, number]) => {
    const p = hold(point);
    return [p[0] - o[0], p[1] - o[1], p[2] - o[2]] as const;
  };
  const [e, g] = [along([1, 0, 0]), along([0, 1, 0])];
  return ([x, y]) => {
    const [dx, dy] = [(x - lens.cxPx) / lens.focalPx, (y - lens.cyPx) / lens.focalPx];
    let a = dx;
    let b = dy;
    for (let times = 0; times < 12; times++) {
      const r2 = a * a + b * b;
      const d = 1 + r2 * (lens.k1 + r2 * lens.k2);
      a = dx / d;
      b = dy / d;
    }
    const [m11, m12] = [e[0] - a * e[2], g[0] - a * g[2]];
    const [m21, m22] = [e[1] - b * e[2], g[1] - b * g[2]];
    const [r1, r2] = [a * o[2] - o[0], b * o[2] - o[1]];
    const det = m11 * m22 - m12 * m21;
    return [
      (m22 * r1 - m12 * r2) / det + BOARD_MIDDLE_MM[0],
      (m11 * r2 - m21 * r1) / det + BOARD_MIDDLE_MM[1],
    ];
  };
}

/** Share of the light that comes back, by mm on the board. */
function surfaceOf({ seed, inkMm }: BoardPictureOptions): (x: number, y: number) => number {
  const draw = drawFrom(seed + 1000);
  const spots = Array.from({ length: 12 }, () => ({
    x: draw.uniform(-300, 500),
    y: draw.uniform(-300, 400),
    width: draw.uniform(3, 60),
    height: draw.uniform(3, 60),
    back: draw.uniform(0.03, 0.6),
  }));
  const ground = (x: number, y: number) =>
    spots.find((s) => x > s.x && x < s.x + s.width && y > s.y && y < s.y + s.height)?.back ?? 0.15;
  const [right, bottom] = [2 * BOARD_MIDDLE_MM[0], 2 * BOARD_MIDDLE_MM[1]];
  // Every edge of the print lies on a lattice of marker cells.
  const [columns, rows] = [right / CELL_MM, bottom / CELL_MM];
  const black = Uint8Array.from({ length: columns * rows }, (_, at) =>
    isBlackCell((at % columns) * CELL_MM, Math.floor(at / columns) * CELL_MM) ? 1 : 0,
  );
  const isBlack = (x: number, y: number): boolean =>
    x >= 0 &&
    y >= 0 &&
    x < right &&
    y < bottom &&
    black[Math.floor(y / CELL_MM) * columns + Math.floor(x / CELL_MM)] === 1;
  const inked = (x: number, y: number): boolean =>
    isBlack(x - inkMm, y - inkMm) ||
    isBlack(x + inkMm, y - inkMm) ||
    isBlack(x - inkMm, y + inkMm) ||
    isBlack(x + inkMm, y + inkMm);
  return (x, y) => {
    if (x < -MARGIN_MM || y < -MARGIN_MM || x > right + MARGIN_MM || y > bottom + MARGIN_MM)
      return ground(x, y);
    return inked(x, y) ? INK : PAPER;
  };
}

const CELL_MM = BOARD_MARKER_MM / 6;

/** By the cell's top left corner. */
function isBlackCell(xMm: number, yMm: number): boolean {
  if (isBlackSquare(Math.floor(xMm / SQUARE_MM), Math.floor(yMm / SQUARE_MM))) return true;
  const marker = BOARD_MARKERS.find(
    ({ cornersMm: [a, , b] }) => xMm >= a[0] && xMm < b[0] && yMm >= a[1] && yMm < b[1],
  );
  if (!marker) return false;
  const [[left, top]] = marker.cornersMm;
  return marker.rows[(yMm - top) / CELL_MM - 1]?.[(xMm - left) / CELL_MM - 1] !== '1';
}

/** sRGB (IEC 61966-2-1, from memory). */
function coded(light: number): number {
  const share = Math.max(0, Math.min(1, light));
  return share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055;
}
