/**
 * The board of the sample photographs as a wheel end: two corners play the face and the pin, the row of corners two squares
 * aside is the tape, and the "stroke" from one photograph to another is a number of squares.
 *
 * Differs  a board is flat and a wheel end is not: the pin's end is told to stand out by 0 (3) mm and the tape to touch it, and
 *          the face's own depth stays at the engine's prior, 6 (5) mm off.
 */
import { poseAt } from '../../src/adjustment/pose.ts';
import type { Mat3, Vec3 } from '../../src/basics/rotation.ts';
import type { Capture } from '../../src/captures/capture.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { BrakeState, View } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { Measurement } from '../../src/measurement/measurement.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';
import { CHESSBOARD_SQUARE_MM, chessboardPictures } from './corner-files.ts';
import { adjustBundle } from './planar-bundle.ts';

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

function viewOf(picture: number, state: BrakeState, pinColumn: number, withTies: boolean): View {
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
    ...(withTies ? ties : []),
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
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: null,
    clip: null,
  };
}

export type BoardStroke = {
  readonly released: number;
  readonly applied: number;
  /** Length of the stroke. */
  readonly squares: number;
  /** Eight corners more are tie points. */
  readonly withTies: boolean;
};

export type BoardMeasured = {
  readonly errorMm: number;
  readonly U95Mm: number;
  readonly fit: Measurement['fit'];
};

export function measureStroke({ released, applied, squares, withTies }: BoardStroke): BoardMeasured {
  const measured = measure({
    views: [
      viewOf(released, 'released', RELEASED_COLUMN, withTies),
      viewOf(applied, 'applied', RELEASED_COLUMN + squares, withTies),
    ],
    sideViews: [],
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
  const { strokeMm, fit } = measured.value;
  return { errorMm: strokeMm.value - CHESSBOARD_SQUARE_MM * squares, U95Mm: strokeMm.U95, fit };
}

/** Every two photographs, either as the released one, with the angle between their directions of view. */
export function photographPairs(): readonly { released: number; applied: number; apartDeg: number }[] {
  const cameraStart = [Math.log(600), 320, 240, 0, 0];
  const { fitted, rotations } = adjustBundle({ pictures, sigmaPx: SIGMA_PX, cameraStart });
  const directions = pictures.map((_, i): Vec3 => {
    const { rotation } = poseAt(fitted.x, 5 + 6 * i, rotations[i] as Mat3);
    return [rotation[6], rotation[7], rotation[8]];
  });
  return directions.flatMap((a, released) =>
    directions.flatMap((b, applied) => {
      const cosine = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
      const apartDeg = (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
      return released === applied ? [] : [{ released, applied, apartDeg }];
    }),
  );
}
