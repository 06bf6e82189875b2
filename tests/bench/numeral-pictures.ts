/** A printed blade photographed: at an angle, near or far, blurred, with noise, glare and what lies about it. */
import type { Draw } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { homographyOf, inverseOf, mapped } from '../../src/vision/homography.ts';
import type { Point } from '../../src/vision/point.ts';
import { INCH_MM, PRINT_PER_MM, type Print, smoothNoise } from './numeral-print.ts';

export type TapePhoto = {
  readonly gray: Gray;
  /** Of a place on the blade, mm from its beginning and from its first edge. */
  readonly placeOf: (alongMm: number, acrossMm: number) => Point;
  readonly pxPerMm: number;
};

const ROOM_PX = 30;

export function photographTape(draw: Draw, print: Print): TapePhoto {
  const pxPerMm = Math.exp(draw.uniform(Math.log(1.9), Math.log(6)));
  const [yaw, pitch, roll] = [draw.normal(0, 18), draw.normal(0, 14), draw.uniform(0, 360)].map(
    (deg) => (Math.max(-38, Math.min(360, deg)) * Math.PI) / 180,
  ) as [number, number, number];
  const distanceMm = draw.uniform(500, 900);
  const lengthMm = print.inches * INCH_MM;
  const flat = ([x, y]: Point): Point => {
    const [u, v] = [x - lengthMm / 2, y - print.widthMm / 2];
    const [cx, sx, cy, sy] = [Math.cos(yaw), Math.sin(yaw), Math.cos(pitch), Math.sin(pitch)];
    const z = distanceMm + u * sx + v * sy;
    const [a, b] = [(u * cx * distanceMm) / z, (v * cy * distanceMm) / z];
    return [
      pxPerMm * (a * Math.cos(roll) - b * Math.sin(roll)),
      pxPerMm * (a * Math.sin(roll) + b * Math.cos(roll)),
    ];
  };
  const corners: Point[] = [
    [0, 0],
    [lengthMm, 0],
    [lengthMm, print.widthMm],
    [0, print.widthMm],
  ];
  const shown = corners.map(flat);
  const [left, top] = [0, 1].map((k) => Math.min(...shown.map((p) => p[k as 0])) - ROOM_PX) as [
    number,
    number,
  ];
  const [widthPx, heightPx] = [0, 1].map((k) =>
    Math.ceil(Math.max(...shown.map((p) => p[k as 0])) + ROOM_PX - (k === 0 ? left : top)),
  ) as [number, number];
  const px = homographyOf(
    corners,
    shown.map(([x, y]): Point => [x - left, y - top]),
  );
  if (!px) throw new Error('four corners make a plane');
  const levels = seen(draw, print, inverseOf(px), widthPx, heightPx);
  const blurred = blur(levels, widthPx, heightPx, draw.uniform(0.45, 1.5));
  const noise = draw.uniform(1, 5);
  const values = Uint8Array.from(blurred, (level) =>
    Math.max(0, Math.min(255, Math.round(level + draw.normal(0, noise)))),
  );
  return {
    gray: { widthPx, heightPx, values },
    placeOf: (alongMm, acrossMm) => mapped(px, [alongMm, acrossMm]),
    pxPerMm,
  };
}

function seen(
  draw: Draw,
  { columns, rows, levels }: Print,
  mm: NonNullable<ReturnType<typeof homographyOf>>,
  widthPx: number,
  heightPx: number,
): Float32Array {
  const behind = draw.uniform(30, 110);
  const gravel = smoothNoise(draw, widthPx, heightPx, draw.uniform(4, 20));
  const light = [draw.uniform(0.75, 1.25), draw.uniform(0.75, 1.25)] as const;
  const glareAt = draw.uniform(-0.5, 1.5);
  const glare = draw.uniform(0, 1) < 0.35 ? draw.uniform(40, 220) : 0;
  const out = new Float32Array(widthPx * heightPx);
  const parts = 3;
  for (let at = 0; at < out.length; at++) {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    let sum = 0;
    for (let part = 0; part < parts * parts; part++) {
      const [u, v] = mapped(mm, [
        x + ((part % parts) + 0.5) / parts,
        y + (Math.floor(part / parts) + 0.5) / parts,
      ]);
      const [column, row] = [Math.floor(u * PRINT_PER_MM), Math.floor(v * PRINT_PER_MM)];
      const isOn = column >= 0 && row >= 0 && column < columns && row < rows;
      if (!isOn) {
        sum += behind * (0.6 + 0.8 * (gravel[at] as number));
        continue;
      }
      const share = column / columns;
      const shine = glare * Math.exp(-(((share - glareAt) / 0.12) ** 2));
      sum += (levels[row * columns + column] as number) * (light[0] + share * (light[1] - light[0])) + shine;
    }
    out[at] = sum / (parts * parts);
  }
  return out;
}

function blur(levels: Float32Array, widthPx: number, heightPx: number, sigmaPx: number): Float32Array {
  const half = Math.ceil(3 * sigmaPx);
  const kernel = Array.from({ length: 2 * half + 1 }, (_, i) => Math.exp(-(((i - half) / sigmaPx) ** 2) / 2));
  const whole = kernel.reduce((sum, value) => sum + value, 0);
  const pass = (from: Float32Array, step: number, length: number, place: (at: number) => number) =>
    from.map((_, at) => {
      const here = place(at);
      let sum = 0;
      for (let k = -half; k <= half; k++) {
        const by = Math.max(-here, Math.min(length - 1 - here, k));
        sum += (kernel[k + half] as number) * (from[at + by * step] as number);
      }
      return sum / whole;
    });
  const along = pass(levels, 1, widthPx, (at) => at % widthPx);
  return pass(along, widthPx, heightPx, (at) => Math.floor(at / widthPx));
}
