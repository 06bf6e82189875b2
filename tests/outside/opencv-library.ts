/** The two functions of OpenCV that give a second opinion here, with plain numbers in and out; its memory is freed. */
import { loadOpenCV } from '@opencvjs/node';
import type { Vec3 } from '../../src/basics/rotation.ts';

type Held = { readonly data64F: Float64Array; delete(): void };

type Library = {
  readonly CV_64FC1: number;
  readonly CV_64FC2: number;
  readonly CV_64FC3: number;
  readonly Mat: new () => Held;
  readonly matFromArray: (rows: number, columns: number, type: number, numbers: readonly number[]) => Held;
  readonly solvePnP: (
    points: Held,
    pixels: Held,
    camera: Held,
    distortion: Held,
    turn: Held,
    shift: Held,
  ) => boolean;
  readonly findHomography: (from: Held, to: Held, method: number) => Held;
};

export type Lens = {
  readonly focalPx: number;
  readonly cxPx: number;
  readonly cyPx: number;
  readonly k1: number;
  readonly k2: number;
};

export type Pixel = readonly [xPx: number, yPx: number];

export type SecondOpinion = {
  /** Rotation vector and translation that take the points into the camera frame, by least squares of the pixels. */
  readonly solvePnp: (
    points: readonly Vec3[],
    pixels: readonly Pixel[],
    lens: Lens,
  ) => { readonly turn: Vec3; readonly shift: Vec3 };
  /** Nine numbers, the last is 1. */
  readonly findHomography: (from: readonly Pixel[], to: readonly Pixel[]) => readonly number[];
};

export async function secondOpinion(): Promise<SecondOpinion> {
  const library = (await loadOpenCV()) as unknown as Library;
  return {
    solvePnp: (points, pixels, { focalPx, cxPx, cyPx, k1, k2 }) =>
      freed((keep) => {
        const matrix = (type: number, rows: number, numbers: readonly number[]): Held =>
          keep(library.matFromArray(rows, 1, type, numbers));
        const camera = [focalPx, 0, cxPx, 0, focalPx, cyPx, 0, 0, 1];
        const [turn, shift] = [keep(new library.Mat()), keep(new library.Mat())];
        const found = library.solvePnP(
          matrix(library.CV_64FC3, points.length, points.flat()),
          matrix(library.CV_64FC2, pixels.length, pixels.flat()),
          keep(library.matFromArray(3, 3, library.CV_64FC1, camera)),
          matrix(library.CV_64FC1, 4, [k1, k2, 0, 0]),
          turn,
          shift,
        );
        if (!found) throw new Error('solvePnP found nothing');
        return { turn: vector(turn), shift: vector(shift) };
      }),
    findHomography: (from, to) =>
      freed((keep) => {
        const matrix = (pixels: readonly Pixel[]): Held =>
          keep(library.matFromArray(pixels.length, 1, library.CV_64FC2, pixels.flat()));
        return [...keep(library.findHomography(matrix(from), matrix(to), 0)).data64F];
      }),
  };
}

function vector({ data64F: [x = Number.NaN, y = Number.NaN, z = Number.NaN] }: Held): Vec3 {
  return [x, y, z];
}

function freed<T>(work: (keep: (held: Held) => Held) => T): T {
  const all: Held[] = [];
  try {
    return work((held) => {
      all.push(held);
      return held;
    });
  } finally {
    for (const held of all) held.delete();
  }
}
