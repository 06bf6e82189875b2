/**
 * Pictures of a board with known truth: the geometry is written here a second time, from the drawing, without the engine's camera
 * and pose. A person turns round the board, near and far, and holds the camera any way up.
 */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { BOARD_CORNERS_MM } from '../../src/references/calibration-board.ts';

export type Lens = {
  readonly focalPx: number;
  readonly cxPx: number;
  readonly cyPx: number;
  readonly k1: number;
  readonly k2: number;
};

export type BoardSceneOptions = {
  readonly seed: number;
  readonly count: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly lens: Lens;
  /** Most tilt of the board against the picture. */
  readonly tiltRad: number;
  readonly noisePx: number;
  /** Share by which the print is longer down than across; depth in mm by which it is bent at 100 mm across, down, crosswise. */
  readonly stretch: number;
  readonly bendMm: readonly [number, number, number];
};

export const PHONE: BoardSceneOptions = {
  seed: 1,
  count: 10,
  widthPx: 4000,
  heightPx: 3000,
  lens: { focalPx: 3100, cxPx: 2013, cyPx: 1484, k1: 0.02, k2: -0.03 },
  tiltRad: 0.7,
  noisePx: 0.2,
  stretch: 0,
  bendMm: [0, 0, 0],
};

/** How the camera is held: place of a board point (middle of the board as origin) in mm of the camera. */
export type Hold = (point: readonly [number, number, number]) => readonly [number, number, number];

export type SeenCorner = { readonly corner: number; readonly xPx: number; readonly yPx: number };

export const BOARD_MIDDLE_MM = [125, 87.5] as const;

export function boardScene(options: BoardSceneOptions) {
  const draw = drawFrom(options.seed);
  return Array.from({ length: options.count }, () => {
    const hold = drawHold(draw, options);
    const corners = BOARD_CORNERS_MM.flatMap(([x, y], corner): SeenCorner[] => {
      const seen = lensPoint(options.lens, hold(formed([x, y], options)));
      const noisy = [
        seen[0] + (options.noisePx > 0 ? draw.normal(0, options.noisePx) : 0),
        seen[1] + (options.noisePx > 0 ? draw.normal(0, options.noisePx) : 0),
      ] as const;
      const inside =
        noisy[0] > 0 && noisy[0] < options.widthPx && noisy[1] > 0 && noisy[1] < options.heightPx;
      return inside ? [{ corner, xPx: noisy[0], yPx: noisy[1] }] : [];
    });
    return { hold, corners };
  });
}

/** A point of the print where it truly is, the middle of the board as origin. */
export function formed(
  [x, y]: readonly [number, number],
  { stretch, bendMm: [a, b, c] }: Pick<BoardSceneOptions, 'stretch' | 'bendMm'>,
): readonly [number, number, number] {
  const [right, down] = [x - BOARD_MIDDLE_MM[0], y - BOARD_MIDDLE_MM[1]];
  const depth = a * (right / 100) ** 2 + b * (down / 100) ** 2 + (c * right * down) / 10_000;
  return [right, down + stretch * down, depth];
}

export function lensPoint(
  { focalPx, cxPx, cyPx, k1, k2 }: Lens,
  [x, y, z]: readonly [number, number, number],
) {
  const r2 = (x * x + y * y) / (z * z);
  const stretched = focalPx * (1 + r2 * (k1 + r2 * k2));
  return [cxPx + (stretched * x) / z, cyPx + (stretched * y) / z] as const;
}

/** Tilted about an axis in the board, turned about the line of sight, set off the axis and away. */
function drawHold(draw: Draw, { lens, widthPx, heightPx, tiltRad }: BoardSceneOptions): Hold {
  const tilt = draw.uniform(0.2, 1) * tiltRad;
  const about = draw.uniform(0, 2 * Math.PI);
  const roll = draw.uniform(-0.3, 0.3) + (Math.PI / 2) * Math.floor(draw.uniform(0, 4));
  const z = (lens.focalPx * 250) / (draw.uniform(0.45, 0.8) * widthPx);
  const x = (draw.uniform(-0.16, 0.16) * widthPx * z) / lens.focalPx;
  const y = (draw.uniform(-0.16, 0.16) * heightPx * z) / lens.focalPx;
  const [ax, ay] = [Math.cos(about), Math.sin(about)];
  const [ct, st] = [Math.cos(tilt), Math.sin(tilt)];
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)];
  return ([px, py, pz]) => {
    // Rodrigues' formula for the axis (ax, ay, 0), then the roll.
    const along = (ax * px + ay * py) * (1 - ct);
    const qx = px * ct + ay * pz * st + ax * along;
    const qy = py * ct - ax * pz * st + ay * along;
    const qz = pz * ct + (ax * py - ay * px) * st;
    return [cr * qx - sr * qy + x, sr * qx + cr * qy + y, qz + z];
  };
}
