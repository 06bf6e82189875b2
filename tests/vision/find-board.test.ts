/** The board's corners in drawn pictures whose truth is known, and beside what OpenCV's own finder of such boards says. */
import { expect, test } from 'vitest';
import {
  BOARD_CORNERS_MM,
  BOARD_MARKER_MM,
  BOARD_MARKERS,
  SQUARE_MM,
} from '../../src/references/calibration-board.ts';
import { findBoard } from '../../src/vision/find-board.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { type BoardSceneOptions, boardScene, formed, lensPoint, PHONE } from '../adjustment/board-scene.ts';
import { boardPicture } from './board-picture.ts';
import { cardPicture, PLAIN } from './card-picture.ts';
import { nodeOpencv } from './node-opencv.ts';

const PLAN = { squareMm: SQUARE_MM, markers: BOARD_MARKERS, cornersMm: BOARD_CORNERS_MM };

const SCENE: BoardSceneOptions = {
  ...PHONE,
  seed: 3,
  count: 3,
  widthPx: 900,
  heightPx: 675,
  lens: { focalPx: 720, cxPx: 456, cyPx: 331, k1: -0.08, k2: 0.03 },
  tiltRad: 0.8,
  noisePx: 0,
};
const LOOK = { blurPx: 0.8, noise: 3, lightFall: 0.4, inkMm: 0.1 };

const PICTURES = boardScene(SCENE).map(({ hold, corners }, i) => ({
  gray: boardPicture({ ...SCENE, ...LOOK, seed: i, hold }),
  inPicture: corners.length,
  truth: (corner: number) =>
    lensPoint(SCENE.lens, hold(formed(BOARD_CORNERS_MM[corner] ?? [Number.NaN, Number.NaN], SCENE))),
}));

async function found(gray: Gray) {
  const result = findBoard(await nodeOpencv(), gray, PLAN);
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value.corners;
}

test('nearly every corner in the picture is found, to a tenth of a pixel and within three of its u', async () => {
  for (const { gray, inPicture, truth } of PICTURES) {
    const corners = await found(gray);
    expect(corners.length).toBeGreaterThan(0.9 * inPicture);
    for (const { corner, xPx, yPx, sigmaPx } of corners) {
      const [x, y] = truth(corner);
      expect(Math.hypot(xPx - x, yPx - y)).toBeLessThan(0.1);
      expect(Math.max(Math.abs(xPx - x), Math.abs(yPx - y))).toBeLessThan(3 * sigmaPx);
    }
  }
});

test("OpenCV's own finder says the same within its accuracy; ours lies nearer to the truth", async () => {
  // biome-ignore lint/suspicious/noExplicitAny: a part of it that only this test uses.
  const cv = (await nodeOpencv()) as any;
  const ids = cv.matFromArray(
    BOARD_MARKERS.length,
    1,
    cv.CV_32S,
    BOARD_MARKERS.map(({ marker }) => marker),
  );
  const family = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  const board = new cv.aruco_CharucoBoard({ width: 10, height: 7 }, SQUARE_MM, BOARD_MARKER_MM, family, ids);
  const finder = new cv.aruco_CharucoDetector(
    board,
    new cv.aruco_CharucoParameters(),
    new cv.aruco_DetectorParameters(),
    new cv.aruco_RefineParameters(10, 3, true),
  );
  let [ours, theirs, count] = [0, 0, 0];
  for (const { gray, truth } of PICTURES) {
    const picture = new cv.Mat(gray.heightPx, gray.widthPx, cv.CV_8UC1);
    picture.data.set(gray.values);
    const [places, numbers] = [new cv.Mat(), new cv.Mat()];
    finder.detectBoard(picture, places, numbers, new cv.MatVector(), new cv.Mat());
    const corners = await found(gray);
    for (let i = 0; i < places.rows; i++) {
      const own = corners.find(({ corner }) => corner === numbers.data32S[i]);
      if (!own) continue;
      const [x, y] = truth(own.corner);
      // From the corner of the first pixel, as here: measured, and other than for the markers' corners.
      const [xPx, yPx] = [places.data32F[2 * i], places.data32F[2 * i + 1]];
      expect(Math.hypot(own.xPx - xPx, own.yPx - yPx)).toBeLessThan(0.3);
      ours += (own.xPx - x) ** 2 + (own.yPx - y) ** 2;
      theirs += (xPx - x) ** 2 + (yPx - y) ** 2;
      count++;
    }
  }
  expect(count).toBeGreaterThan(100);
  expect(ours).toBeLessThan(theirs / 2);
});

test('a corner that something lies on is not returned', async () => {
  const { gray, truth } = PICTURES[0] as (typeof PICTURES)[number];
  const covered = new Uint8Array(gray.values);
  const [x, y] = truth(22);
  for (let row = Math.round(y) - 3; row < y + 12; row++)
    covered.fill(120, row * gray.widthPx + Math.round(x) - 3, row * gray.widthPx + Math.round(x) + 12);
  const before = await found(gray);
  const after = await found({ ...gray, values: covered });
  expect(before.some(({ corner }) => corner === 22)).toBe(true);
  expect(after.some(({ corner }) => corner === 22)).toBe(false);
  expect(after.length).toBeGreaterThan(before.length - 6);
});

test('the printed target is no board, and neither is a plain picture', async () => {
  expect(await found(cardPicture(PLAIN).gray)).toEqual([]);
  expect(await found({ widthPx: 64, heightPx: 48, values: new Uint8Array(64 * 48).fill(90) })).toEqual([]);
});
