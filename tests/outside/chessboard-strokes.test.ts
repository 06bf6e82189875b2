/**
 * The whole way of a measurement on photographs of a real board: two corners play the face and the pin, the row of corners two
 * squares aside is the tape, and the "stroke" from one photograph to the next is one, two or three squares.
 *
 * Source   as chessboard-distances.test.ts; camera profile from calibrateCamera of python3-opencv 4.6.0 on the same corners.
 * Differs  a board is flat and a wheel end is not: the pin's end is told to stand out by 0 (3) mm and the tape to touch it, and
 *          the face's own depth stays at the engine's prior, 6 (5) mm off. Eight corners are tie points: without them two
 *          hand-held pictures with a tape leave the tilt to priors that do not hold here (docs/outside.md).
 */
import { describe, expect, test } from 'vitest';
import type { Capture } from '../../src/captures/capture.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { BrakeState, View } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';
import { CHESSBOARD_SQUARE_MM, chessboardPictures } from './corner-files.ts';

const pictures = chessboardPictures();
/** The engine counts pixels from the corner of the first one, the corners' file from its centre. */
const HALF_PX = 0.5;
const SIGMA_PX = 0.2;
const [ROD_ROW, TAPE_ROW, RELEASED_COLUMN] = [2, 4, 3];

const PROFILE = {
  id: 'board',
  name: 'sample camera',
  madeAt: '2025-01-01T00:00:00Z',
  widthPx: 640,
  heightPx: 480,
  focalPx: 532.887,
  uLnFocal: 0.63 / 532.887,
  cxPx: 342.496 + HALF_PX,
  cyPx: 232.857 + HALF_PX,
  uCxPx: 0.71,
  uCyPx: 0.76,
  k1: -0.2905,
  uK1: 0.0034,
  k2: 0.1041,
  uK2: 0.0114,
  rmsPx: 0.205,
  photoCount: 13,
  cornerCount: 702,
};

function viewOf(picture: number, state: BrakeState, pinColumn: number): View {
  const placed = (column: number, row: number, what: string) => {
    const corner = pictures[picture]?.[9 * row + column];
    if (!corner) throw new Error('no such corner');
    const [xPx, yPx] = [corner.xPx + HALF_PX, corner.yPx + HALF_PX];
    return { id: `${state}-${what}`, xPx, yPx, sigmaPx: SIGMA_PX, placedBy: 'assist' as const };
  };
  const tape = Array.from(
    { length: 9 },
    (_, column): Mark => ({
      kind: 'tape-graduation',
      readingMm: CHESSBOARD_SQUARE_MM * column,
      ...placed(column, TAPE_ROW, `tape${column}`),
    }),
  );
  const ties = [0, 2, 4, 6].flatMap((column) =>
    [0, 5].map((row): Mark => {
      const tie = `${column}-${row}`;
      return { kind: 'tie-point', tie, ...placed(column, row, tie) };
    }),
  );
  const marks: Mark[] = [
    { kind: 'chamber-face', ...placed(0, ROD_ROW, 'face') },
    { kind: 'clevis-pin', ...placed(pinColumn, ROD_ROW, 'pin') },
    { kind: 'rod-line', ...placed(1, ROD_ROW, 'rod') },
    ...tape,
    ...ties,
  ];
  return { state, captureId: `c${picture}`, frame: null, marks };
}

function captureOf(picture: number): Capture {
  return {
    id: `c${picture}`,
    kind: 'photo',
    fileName: `left${picture}.jpg`,
    mediaType: 'image/jpeg',
    sizeBytes: 1,
    sha256: '0'.repeat(64),
    widthPx: 640,
    heightPx: 480,
    rotationDeg: 0,
    takenAt: null,
    focal35Mm: null,
    clip: null,
  };
}

function strokeBetween(released: number, applied: number, squares: number) {
  const measured = measure({
    views: [
      viewOf(released, 'released', RELEASED_COLUMN),
      viewOf(applied, 'applied', RELEASED_COLUMN + squares),
    ],
    captures: [captureOf(released), captureOf(applied)],
    cameraStill: false,
    cameraProfile: PROFILE,
    references: {
      ...NO_REFERENCES,
      tape: { zeroAtFace: true, unmoved: false, touchesPin: true },
      pinEnd: { outMm: 0, uOutMm: 3 },
    },
  });
  if (!measured.ok) throw new Error(measured.failure.code);
  return measured.value;
}

describe('each photograph and the next as released and applied', () => {
  const runs = [1, 2, 3].flatMap((squares) =>
    pictures.map((_, i) => {
      const { strokeMm, fit } = strokeBetween(i, (i + 1) % pictures.length, squares);
      return { errorMm: strokeMm.value - CHESSBOARD_SQUARE_MM * squares, U95Mm: strokeMm.U95, fit };
    }),
  );
  const held = runs.filter(({ errorMm, U95Mm }) => Math.abs(errorMm) <= U95Mm).length;
  const offs = runs.map(({ errorMm }) => Math.abs(errorMm)).sort((a, b) => a - b);

  test(`strokes of 25, 50 and 75 mm: U95 holds ${held} of ${runs.length}, median error ${offs[19]?.toFixed(2)} mm`, () => {
    expect(runs).toHaveLength(39);
    expect(held).toBeGreaterThanOrEqual(35);
    expect(offs[19]).toBeLessThan(1.5);
  });

  test('no fit says that its marks disagree', () => {
    expect(runs.every(({ fit }) => fit.inflation === 1)).toBe(true);
  });
});
