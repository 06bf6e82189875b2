/**
 * A tape's blade as it is printed, drawn flat: strokes and numerals in the ways tapes have them, worn and dirty. Common practice, no source, for all of
 * these; it shares no code with what reads them.
 */
import type { Draw } from '../../src/basics/random.ts';
import type { Face, Glyph } from './numeral-glyphs.ts';

export const PRINT_PER_MM = 8;
export const INCH_MM = 25.4;

/** A digit's middle on the blade, mm from its beginning and from its first edge; turn: quarter turns clockwise from upright with the first edge above. */
export type PrintedDigit = {
  readonly digit: number;
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly heightMm: number;
  readonly turn: 0 | 1 | 2 | 3;
};
/** levels: rows across from the first edge, PRINT_PER_MM each way. reads: which reading a whole inch has, by its place. */
export type Print = {
  readonly face: string;
  readonly columns: number;
  readonly rows: number;
  readonly levels: Float32Array;
  readonly widthMm: number;
  readonly inches: number;
  readonly reads: (place: number) => number;
  readonly bothEdges: boolean;
  /** How a foot is printed: as 1F; again: what follows it counts from one. */
  readonly feet: 'again' | 'mark' | null;
  readonly digits: readonly PrintedDigit[];
};

type Canvas = { readonly columns: number; readonly rows: number; readonly ink: Float32Array };

export function printTape(draw: Draw, faces: readonly Face[], hasNumerals = true): Print {
  const chance = (share: number) => draw.uniform(0, 1) < share;
  const face = faces[Math.floor(draw.uniform(0, faces.length))] as Face;
  const widthMm = [13, 16, 19, 19, 25.4][Math.floor(draw.uniform(0, 5))] as number;
  const inches = Math.floor(draw.uniform(8, 14));
  const first = Math.floor(draw.uniform(0, chance(0.25) ? 12 : 3));
  const isBackward = chance(0.15);
  const reads = (place: number) => (isBackward ? first + inches - place : first + place);
  const columns = Math.round(inches * INCH_MM * PRINT_PER_MM);
  const canvas: Canvas = { columns, rows: Math.round(widthMm * PRINT_PER_MM), ink: new Float32Array(0) };
  const { rows } = canvas;
  const ink = new Float32Array(columns * rows);
  const drawn = { ...canvas, ink };
  const turn = (chance(0.25) ? (chance(0.5) ? 1 : 3) : chance(0.5) ? 0 : 2) as PrintedDigit['turn'];
  const heightMm = Math.min(turn % 2 === 0 ? 10 : 8.5, widthMm * draw.uniform(0.3, 0.47));
  const narrow = draw.uniform(0.82, 1.08);
  const gapMm = draw.uniform(0, 0.12) * heightMm;
  const side = chance(0.55) ? -1 : chance(0.5) ? 0 : 1;
  const besideMm = draw.uniform(0.7, 2);
  const bothEdges = chance(0.6);
  const isBroken = side === 0;
  const numeralMm = bothEdges ? widthMm * draw.uniform(0.45, 0.55) : widthMm * draw.uniform(0.55, 0.66);
  const wholeMm = isBroken ? Math.min(0.5 * widthMm, numeralMm - heightMm / 2 - 0.6) : widthMm;
  strokes(drawn, { widthMm, inches, wholeMm, bothEdges, halfMm: draw.uniform(0.16, 0.26), draw });
  const feet = chance(0.35) ? (chance(0.4) ? 'again' : 'mark') : null;
  const isRed = chance(0.2);
  const digits: PrintedDigit[] = [];
  for (let place = 0; place <= inches; place++) {
    const reading = reads(place);
    if (reading <= 0 || !hasNumerals) continue;
    const text = textOf(reading, feet);
    const strength = reading === 12 || isRed ? draw.uniform(0.45, 0.7) : 1;
    const glyphs = [...text].map((each) => face.glyphs['0123456789F'.indexOf(each)] as Glyph);
    const unit = heightMm / (face.glyphs[8] as Glyph).heightPx;
    const sizes = glyphs.map((glyph) => [glyph.widthPx * unit * narrow, glyph.heightPx * unit] as const);
    const lengthMm = sizes.reduce((sum, [wide]) => sum + wide, gapMm * (glyphs.length - 1));
    // Along the blade it takes the text's length where it is upright, its height where it is turned.
    const spanMm = turn % 2 === 0 ? lengthMm : heightMm;
    const middleMm = place * INCH_MM + side * (spanMm / 2 + besideMm);
    let at = -lengthMm / 2;
    glyphs.forEach((glyph, i) => {
      const [wide, high] = sizes[i] as readonly [number, number];
      const off = at + wide / 2;
      at += wide + gapMm;
      const [dx, dy] = [
        [off, 0],
        [0, off],
        [-off, 0],
        [0, -off],
      ][turn] as [number, number];
      const [alongMm, acrossMm] = [middleMm + dx, numeralMm + dy];
      blit(drawn, glyph, { alongMm, acrossMm, wide, high, turn, strength });
      const digit = '0123456789'.indexOf(text[i] as string);
      if (digit >= 0) digits.push({ digit, alongMm, acrossMm, heightMm, turn });
    });
  }
  const levels = coloured(drawn, draw);
  return { face: face.name, columns, rows, levels, widthMm, inches, reads, bothEdges, feet, digits };
}

function textOf(reading: number, feet: Print['feet']): string {
  if (feet && reading % 12 === 0) return `${reading / 12}F`;
  return feet === 'again' ? String(reading % 12) : String(reading);
}

type Strokes = {
  readonly widthMm: number;
  readonly inches: number;
  readonly wholeMm: number;
  readonly bothEdges: boolean;
  readonly halfMm: number;
  readonly draw: Draw;
};

function strokes({ columns, rows, ink }: Canvas, drawn: Strokes): void {
  const { widthMm, inches, wholeMm, bothEdges, halfMm, draw } = drawn;
  const longer = draw.uniform(0.85, 1);
  const lengths = [0.29, 0.2, 0.15, 0.1].map((share) => share * longer * Math.min(19, widthMm));
  for (let k = 0; k <= 16 * inches; k++) {
    const kind = [16, 8, 4, 2, 1].findIndex((every) => k % every === 0);
    const lengthMm = kind === 0 ? wholeMm : (lengths[kind - 1] as number);
    const x = (k * INCH_MM * PRINT_PER_MM) / 16;
    for (let column = Math.round(x - halfMm * PRINT_PER_MM); column < x + halfMm * PRINT_PER_MM; column++) {
      if (column < 0 || column >= columns) continue;
      for (let row = 0; row < Math.min(rows, lengthMm * PRINT_PER_MM); row++) {
        ink[row * columns + column] = 1;
        if (bothEdges) ink[(rows - 1 - row) * columns + column] = 1;
      }
    }
  }
}

type Placed = {
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly wide: number;
  readonly high: number;
  readonly turn: 0 | 1 | 2 | 3;
  readonly strength: number;
};

function blit({ columns, rows, ink }: Canvas, glyph: Glyph, placed: Placed): void {
  const { alongMm, acrossMm, wide, high, turn, strength } = placed;
  const reach = Math.ceil((Math.max(wide, high) / 2 + 0.3) * PRINT_PER_MM);
  const [x0, y0] = [alongMm * PRINT_PER_MM, acrossMm * PRINT_PER_MM];
  for (let row = Math.max(0, Math.floor(y0 - reach)); row < Math.min(rows, y0 + reach); row++)
    for (let column = Math.max(0, Math.floor(x0 - reach)); column < Math.min(columns, x0 + reach); column++) {
      const [dx, dy] = [(column + 0.5 - x0) / PRINT_PER_MM, (row + 0.5 - y0) / PRINT_PER_MM];
      const [right, down] = [
        [dx, dy],
        [dy, -dx],
        [-dx, -dy],
        [-dy, dx],
      ][turn] as [number, number];
      const i = Math.floor((right / wide + 0.5) * glyph.widthPx);
      const j = Math.floor((down / high + 0.5) * glyph.heightPx);
      if (i < 0 || j < 0 || i >= glyph.widthPx || j >= glyph.heightPx) continue;
      const at = row * columns + column;
      const inked = (strength * (glyph.ink[j * glyph.widthPx + i] as number)) / 255;
      ink[at] = Math.max(ink[at] as number, inked);
    }
}

/** Yellow, white or bare steel as gray; worn off in patches, dirt on it, light that changes along it. */
function coloured({ columns, rows, ink }: Canvas, draw: Draw): Float32Array {
  const blade = draw.uniform(140, 225);
  const print = blade * draw.uniform(0.12, 0.35);
  const worn = smoothNoise(draw, columns, rows, draw.uniform(3, 12));
  const dirt = smoothNoise(draw, columns, rows, draw.uniform(20, 120));
  const [wornMost, dirtMost] = [draw.uniform(0.05, 0.35), draw.uniform(0, 0.5)];
  const wornFrom = draw.uniform(0.62, 1);
  const tone = draw.uniform(0.25, 0.6) * blade;
  const levels = new Float32Array(ink.length);
  for (let at = 0; at < ink.length; at++) {
    const bare = (worn[at] as number) > wornFrom ? 1 : wornMost * (worn[at] as number);
    const here = (ink[at] as number) * (1 - bare);
    const soiled = dirtMost * Math.max(0, 2 * (dirt[at] as number) - 0.8);
    levels[at] = (1 - soiled) * (blade + here * (print - blade)) + soiled * tone;
  }
  return levels;
}

/** 0 to 1, by values a size apart, px. */
export function smoothNoise(draw: Draw, columns: number, rows: number, size: number): Float32Array {
  const [wide, high] = [Math.ceil(columns / size) + 2, Math.ceil(rows / size) + 2];
  const values = Float32Array.from({ length: wide * high }, () => draw.uniform(0, 1));
  const out = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const [j, v] = [Math.floor(row / size), (row / size) % 1];
    for (let column = 0; column < columns; column++) {
      const [i, u] = [Math.floor(column / size), (column / size) % 1];
      const at = j * wide + i;
      const [a, b, c, d] = [values[at], values[at + 1], values[at + wide], values[at + wide + 1]] as [
        number,
        number,
        number,
        number,
      ];
      out[row * columns + column] = (1 - v) * (a + u * (b - a)) + v * (c + u * (d - c));
    }
  }
  return out;
}
