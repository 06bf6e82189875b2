/**
 * Which inches a tape's strokes are, by the numerals beside them.
 *
 * Model    numerals of 5 by 7 dots, our own, softened; each against the blade's darkness in windows of several sizes and places beside every
 *          stroke by normalised correlation; one size and one place for all. Reading on, strokes bear r, r + 1, r + 2 ...: for each r the sum
 *          over strokes of their best size and place; upright, they grow to the reader's right, so the blade's direction comes with it
 * Assumes  numerals upright beside or over the strokes of whole inches, darker than the blade, like printed ones
 * Fails    null where no r stands out from the next by LEAST_LEAD
 */

/** Brightness beside a stroke: u along the blade in inches from the stroke, v across it, 0 to 1 of its width. */
export type AboutStroke = (u: number, v: number) => number;
export type ReadNumerals = {
  /** Of the first stroke given. */
  readonly first: number;
  /** 1: readings grow in the order given. */
  readonly grows: 1 | -1;
  /** Mean correlation of the best, and how far it lies above the next best. */
  readonly score: number;
  readonly lead: number;
};

const DOTS = [
  '01110 10001 10011 10101 11001 10001 01110',
  '00100 01100 00100 00100 00100 00100 01110',
  '01110 10001 00001 00110 01000 10000 11111',
  '01110 10001 00001 00110 00001 10001 01110',
  '00010 00110 01010 10010 11111 00010 00010',
  '11111 10000 11110 00001 00001 10001 01110',
  '00110 01000 10000 11110 10001 10001 01110',
  '11111 00001 00010 00010 00100 00100 00100',
  '01110 10001 10001 01110 10001 10001 01110',
  '01110 10001 10001 01111 00001 00010 01100',
].map((rows) => rows.split(' ').map((row) => [...row].map(Number)));

/** Samples per inch along; a blade is taken for three quarters of an inch wide, whatever it is. */
const PER_INCH = 32;
const FROM = -0.75;
const COLUMNS = Math.round(1.5 * PER_INCH);
const ROWS = 24;
const HEIGHTS = [7, 8.5, 10];
const MOST_READING = 26;
const LEAST_SCORE = 0.45;
const LEAST_LEAD = 0.08;
const LEAST_STROKES = 4;

type Glyph = { readonly width: number; readonly height: number; readonly values: Float64Array };

export function readNumerals(strokes: readonly AboutStroke[]): ReadNumerals | null {
  if (strokes.length < LEAST_STROKES) return null;
  const tried = ([1, -1] as const).flatMap((grows) => {
    const patches = strokes.map((stroke) => patchOf(stroke, grows));
    const maps = HEIGHTS.map((height) =>
      patches.map((patch) => DOTS.map((dots) => widened(matchMap(patch, glyphOf(dots, height))))),
    );
    const ordered = grows === 1 ? maps : maps.map((all) => [...all].reverse());
    return Array.from({ length: MOST_READING - strokes.length + 1 }, (_, i) => {
      const low = i + 1;
      return {
        low,
        grows,
        score: Math.max(...ordered.map((all, size) => bestLayout(all, low, HEIGHTS[size] as number))),
      };
    });
  });
  tried.sort((a, b) => b.score - a.score);
  const [best, next] = [tried[0], tried[1]];
  if (!best || !next) return null;
  const lead = best.score - next.score;
  if (best.score < LEAST_SCORE || lead < LEAST_LEAD) return null;
  const first = best.grows === 1 ? best.low : best.low + strokes.length - 1;
  return { first, grows: best.grows, score: best.score, lead };
}

/** Upright for this direction: the blade turned by half a turn for the other. */
function patchOf(stroke: AboutStroke, grows: 1 | -1): Float64Array {
  const patch = new Float64Array(COLUMNS * ROWS);
  for (let row = 0; row < ROWS; row++)
    for (let column = 0; column < COLUMNS; column++) {
      const u = FROM + (column + 0.5) / PER_INCH;
      const v = (row + 0.5) / ROWS;
      patch[row * COLUMNS + column] = -(grows === 1 ? stroke(u, v) : stroke(-u, 1 - v));
    }
  return patch;
}

function glyphOf(dots: readonly (readonly number[])[], height: number): Glyph {
  const [h, w] = [Math.round(height) + 2, Math.round(height * 0.62) + 2];
  const values = new Float64Array(w * h);
  const [fine, soft] = [3, 0.35];
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      let sum = 0;
      for (let j = -fine; j <= fine; j++)
        for (let i = -fine; i <= fine; i++) {
          const row = Math.floor(((y - 1 + 0.5) / (h - 2)) * 7 + (soft * j * 2) / fine);
          const column = Math.floor(((x - 1 + 0.5) / (w - 2)) * 5 + (soft * i * 2) / fine);
          sum += dots[row]?.[column] ?? 0;
        }
      values[y * w + x] = sum;
    }
  return { width: w, height: h, values: standard(values) };
}

function standard(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  const size = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0)) || 1;
  return values.map((v) => (v - mean) / size);
}

/** Correlation at each place of the glyph's upper left corner in the patch. */
function matchMap(patch: Float64Array, { width, height, values }: Glyph): Float64Array {
  const map = new Float64Array(COLUMNS * ROWS).fill(-1);
  for (let top = 0; top + height <= ROWS; top++)
    for (let left = 0; left + width <= COLUMNS; left++) {
      let [dot, sum, squares] = [0, 0, 0];
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const p = patch[(top + y) * COLUMNS + left + x] as number;
          dot += p * (values[y * width + x] as number);
          sum += p;
          squares += p * p;
        }
      const spread = Math.sqrt(Math.max(0, squares - (sum * sum) / (width * height)));
      // Levels of 255 over the whole window: what is fainter is nothing printed.
      map[top * COLUMNS + left] = dot / Math.max(spread, 2 * Math.sqrt(width * height));
    }
  return map;
}

/** all: for each stroke in the order of reading, for each numeral its map. */
function bestLayout(all: readonly (readonly Float64Array[])[], low: number, height: number): number {
  const pitch = Math.round(height * 0.62) + 1;
  let best = -1;
  for (let at = 0; at < COLUMNS * ROWS; at++) {
    if (at % COLUMNS < pitch) continue;
    let sum = 0;
    for (const [i, maps] of all.entries()) {
      const reading = low + i;
      const units = maps[reading % 10]?.[at] ?? -1;
      sum += reading < 10 ? units : (units + (maps[Math.floor(reading / 10)]?.[at - pitch] ?? -1)) / 2;
    }
    best = Math.max(best, sum / all.length);
  }
  return best;
}

/** The best within a sample: prints shift so far with the blade's bow and the stroke's own place. */
function widened(map: Float64Array): Float64Array {
  return map.map((_, at) => {
    let best = -1;
    for (const row of [-COLUMNS, 0, COLUMNS])
      for (let column = -1; column <= 1; column++) {
        const there = map[at + row + column];
        if (there !== undefined && there > best) best = there;
      }
    return best;
  });
}
