/**
 * How bright a point of a marker's picture is: the model that is fitted to its pixels.
 *
 * Model    I(x, y) = (low + (high - low) V(u, v)) (1 + p x + q y)
 *          V       the marker's cells (0 black, 1 white) after Gaussian blur: sum over cells of a_i(u) B_ij b_j(v), where
 *                  a_i = P((u - i) / s_u) - P((u - i - 1) / s_u), alike b_j with s_v; beyond the border white without end
 *          u, v    cells from the marker's top left corner: u = (g0 x + g1 y + g2) / w, v = (g3 x + g4 y + g5) / w,
 *                  w = g6 x + g7 y + 1; x, y: pixels from the marker's middle over half its side
 *          unknowns, in order: g0..g7, s_u, s_v (cells), low, high, p, q
 * Assumes  brightness in proportion to light, blur alike all over one marker, light that changes evenly across it, and that
 *          the blur's axes lie along the cells (where two edges meet at once this is near enough: its share is small).
 * Fails    nothing; far from the marker the model is white.
 */
import { BLUR_END, blurredStep, stepSlope } from './blurred-step.ts';

export const UNKNOWNS = 14;
/** Four inner cells and a black border of one on each side. */
export const CELLS = 6;
/** The white beyond the border counts as one more cell on each side. */
const N = CELLS + 2;

/** B: 8 x 8, row by row (v), 1 white. */
export function cellsOf(rows: readonly string[]): Float64Array {
  return Float64Array.from({ length: N * N }, (_, at) => {
    const [row, column] = [Math.floor(at / N), at % N];
    if (row === 0 || row === N - 1 || column === 0 || column === N - 1) return 1;
    return Number(rows[row - 2]?.[column - 2] ?? 0);
  });
}

/** Share of each cell in a blurred point of a line, with its slope by place and by blur. */
type Shares = {
  readonly of: Float64Array;
  readonly byPlace: Float64Array;
  readonly byBlur: Float64Array;
  /** Only cells from `first` to `last` have a share worth counting. */
  first: number;
  last: number;
};

const newShares = (): Shares => ({
  of: new Float64Array(N),
  byPlace: new Float64Array(N),
  byBlur: new Float64Array(N),
  first: 0,
  last: N - 1,
});

export type MarkerModel = {
  /** Brightness at x, y; `slopes` is filled with its derivative by each unknown. */
  readonly brightness: (unknowns: Float64Array, x: number, y: number, slopes: Float64Array) => number;
};

export function markerModel(cells: Float64Array): MarkerModel {
  const [across, down] = [newShares(), newShares()];

  function brightness(k: Float64Array, x: number, y: number, slopes: Float64Array): number {
    const at = (index: number) => k[index] as number;
    const w = at(6) * x + at(7) * y + 1;
    const u = (at(0) * x + at(1) * y + at(2)) / w;
    const v = (at(3) * x + at(4) * y + at(5)) / w;
    fillShares(across, u, at(8));
    fillShares(down, v, at(9));
    const { value, byU, byV, byBlurU, byBlurV } = blurred(cells, across, down);
    const [low, high] = [at(10), at(11)];
    const light = 1 + at(12) * x + at(13) * y;
    const contrast = (high - low) * light;
    const [perU, perV] = [(contrast * byU) / w, (contrast * byV) / w];
    const byW = -(perU * u + perV * v);
    const unlit = low + (high - low) * value;
    slopes[0] = perU * x;
    slopes[1] = perU * y;
    slopes[2] = perU;
    slopes[3] = perV * x;
    slopes[4] = perV * y;
    slopes[5] = perV;
    slopes[6] = byW * x;
    slopes[7] = byW * y;
    slopes[8] = contrast * byBlurU;
    slopes[9] = contrast * byBlurV;
    slopes[10] = (1 - value) * light;
    slopes[11] = value * light;
    slopes[12] = unlit * x;
    slopes[13] = unlit * y;
    return unlit * light;
  }
  return { brightness };
}

/** V and its slopes. */
function blurred(cells: Float64Array, across: Shares, down: Shares) {
  let value = 0;
  let byU = 0;
  let byV = 0;
  let byBlurU = 0;
  let byBlurV = 0;
  for (let j = down.first; j <= down.last; j++) {
    let row = 0;
    let rowByU = 0;
    let rowByBlur = 0;
    for (let i = across.first; i <= across.last; i++) {
      const cell = cells[j * N + i] as number;
      row += cell * (across.of[i] as number);
      rowByU += cell * (across.byPlace[i] as number);
      rowByBlur += cell * (across.byBlur[i] as number);
    }
    const share = down.of[j] as number;
    value += row * share;
    byU += rowByU * share;
    byBlurU += rowByBlur * share;
    byV += row * (down.byPlace[j] as number);
    byBlurV += row * (down.byBlur[j] as number);
  }
  return { value, byU, byV, byBlurU, byBlurV };
}

function fillShares(shares: Shares, place: number, blur: number): void {
  const reach = BLUR_END * Math.abs(blur);
  shares.first = cellAt(place - reach);
  shares.last = cellAt(place + reach);
  let lower = 1;
  let lowerSlope = 0;
  let lowerByBlur = 0;
  for (let cell = shares.first; cell <= shares.last; cell++) {
    const distance = place - cell;
    const t = distance / blur;
    // The edge above this cell; above the last one that counts there is none.
    const ends = cell === shares.last;
    const upper = ends ? 0 : blurredStep(t);
    const upperSlope = ends ? 0 : stepSlope(t) / blur;
    const upperByBlur = ends ? 0 : (upperSlope * distance) / blur;
    shares.of[cell] = lower - upper;
    shares.byPlace[cell] = lowerSlope - upperSlope;
    shares.byBlur[cell] = upperByBlur - lowerByBlur;
    lower = upper;
    lowerSlope = upperSlope;
    lowerByBlur = upperByBlur;
  }
}

/** Cell 0 is the white before the border, without end. */
const cellAt = (place: number) => Math.max(0, Math.min(N - 1, Math.ceil(place)));
