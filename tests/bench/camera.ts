/**
 * npm run bench:camera: how well the board's corners are found, beside OpenCV's own finder, and how well calibrations from them keep
 * what they state. Writes the tables of docs/camera.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { boardPictureOf } from '../../src/adjustment/board-sights.ts';
import { calibrate } from '../../src/adjustment/calibrate.ts';
import { drawFrom } from '../../src/basics/random.ts';
import {
  BOARD_CORNERS_MM,
  BOARD_MARKER_MM,
  BOARD_MARKERS,
  SQUARE_MM,
} from '../../src/references/calibration-board.ts';
import { findBoard } from '../../src/vision/find-board.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Opencv } from '../../src/vision/opencv.ts';
import { type BoardSceneOptions, boardScene, formed, lensPoint, PHONE } from '../adjustment/board-scene.ts';
import { type BoardPictureOptions, boardPicture } from '../vision/board-picture.ts';
import { jpegLoss } from '../vision/jpeg-loss.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';

type Look = Pick<BoardPictureOptions, 'blurPx' | 'noise' | 'lightFall' | 'inkMm'> & {
  readonly quality: number;
};
type Found = {
  readonly corner: number;
  readonly xPx: number;
  readonly yPx: number;
  readonly sigmaPx: number;
};

const PLACE = 'docs/camera.md';
const BEGIN = '<!-- tables: npm run bench:camera -->';
const PICTURES = Number(process.argv[2] ?? 4);
const CALIBRATIONS = 100;
const PLAN = { squareMm: SQUARE_MM, markers: BOARD_MARKERS, cornersMm: BOARD_CORNERS_MM };
const SMALL: BoardSceneOptions = {
  ...PHONE,
  ...{ seed: 5, count: PICTURES, widthPx: 1200, heightPx: 900, tiltRad: 0.8, noisePx: 0 },
  lens: { focalPx: 1000, cxPx: 611, cyPx: 442, k1: -0.06, k2: 0.02 },
};
const USUAL: Look = { blurPx: 0.8, noise: 3, lightFall: 0.4, inkMm: 0.1, quality: 90 };
const LOOKS: readonly (readonly [string, Look])[] = [
  ['usual', USUAL],
  ['blur 1.5 px', { ...USUAL, blurPx: 1.5 }],
  ['blur 2.5 px', { ...USUAL, blurPx: 2.5 }],
  ['noise 10 of 255', { ...USUAL, noise: 10 }],
  ['ink 0.3 mm over', { ...USUAL, inkMm: 0.3 }],
  ['light falls by 0.8', { ...USUAL, lightFall: 0.8 }],
  ['JPEG quality 60', { ...USUAL, quality: 60 }],
];

function ownFinder(cv: Opencv): (gray: Gray) => Found[] {
  // biome-ignore lint/suspicious/noExplicitAny: a part of it that the app does not use.
  const all = cv as any;
  const ids = all.matFromArray(
    BOARD_MARKERS.length,
    1,
    all.CV_32S,
    BOARD_MARKERS.map(({ marker }) => marker),
  );
  const family = all.getPredefinedDictionary(all.DICT_4X4_50);
  const finder = new all.aruco_CharucoDetector(
    new all.aruco_CharucoBoard({ width: 10, height: 7 }, SQUARE_MM, BOARD_MARKER_MM, family, ids),
    new all.aruco_CharucoParameters(),
    new all.aruco_DetectorParameters(),
    new all.aruco_RefineParameters(10, 3, true),
  );
  return (gray) => {
    const held = [new all.Mat(gray.heightPx, gray.widthPx, all.CV_8UC1), new all.Mat(), new all.Mat()];
    const [picture, places, numbers] = held;
    const more = [new all.MatVector(), new all.Mat()];
    picture.data.set(gray.values);
    finder.detectBoard(picture, places, numbers, ...more);
    const found = Array.from({ length: places.rows }, (_, i) => ({
      corner: numbers.data32S[i],
      xPx: places.data32F[2 * i],
      yPx: places.data32F[2 * i + 1],
      sigmaPx: Number.NaN,
    }));
    for (const each of [...held, ...more]) each.delete();
    return found;
  };
}

function finderRows(cv: Opencv): string[] {
  const theirs = ownFinder(cv);
  return LOOKS.map(([name, look]) => {
    const [ours, others]: [number[], number[]] = [[], []];
    let [inPicture, withinU] = [0, 0];
    for (const [i, { hold, corners }] of boardScene(SMALL).entries()) {
      const drawn = boardPicture({ ...SMALL, ...look, seed: i, hold });
      const values = jpegLoss(drawn.values, drawn.widthPx, drawn.heightPx, look.quality);
      const gray = { ...drawn, values };
      inPicture += corners.length;
      const off = ({ corner, xPx, yPx }: Found) => {
        const [x, y] = lensPoint(SMALL.lens, hold(formed(BOARD_CORNERS_MM[corner] ?? [0, 0], SMALL)));
        return [xPx - x, yPx - y] as const;
      };
      const found = findBoard(cv, gray, PLAN);
      if (!found.ok) throw new Error(JSON.stringify(found.failure));
      for (const each of found.value.corners) {
        const [dx, dy] = off(each);
        ours.push(Math.hypot(dx, dy));
        withinU += [dx, dy].filter((d) => Math.abs(d) < 1.96 * each.sigmaPx).length / 2;
      }
      others.push(...theirs(gray).map((each) => Math.hypot(...off(each))));
    }
    return `| ${name} | ${share(ours.length, inPicture)} | ${rms(ours)} | ${most(ours)} | ${share(withinU, ours.length)} | ${share(others.length, inPicture)} | ${rms(others)} | ${most(others)} |`;
  });
}

const share = (part: number, whole: number) => `${((100 * part) / whole).toFixed(0)} %`;
const rms = (distances: readonly number[]) =>
  Math.sqrt(distances.reduce((sum, d) => sum + d * d, 0) / distances.length).toFixed(3);
const most = (distances: readonly number[]) => Math.max(...distances).toFixed(2);

const SERIES: readonly (readonly [string, Partial<BoardSceneOptions>])[] = [
  ['8 photos', { count: 8 }],
  ['12 photos', { count: 12 }],
  ['20 photos', { count: 20 }],
  ['12 photos, tilted by 6° at most', { count: 12, tiltRad: 0.1 }],
  ['12 photos, lens three times as long', { count: 12, lens: { ...PHONE.lens, focalPx: 9300 } }],
  [
    '12 photos, wide lens',
    { count: 12, lens: { focalPx: 1700, cxPx: 2013, cyPx: 1484, k1: -0.12, k2: 0.03 } },
  ],
];

function calibrationRows(): string[] {
  return SERIES.map(([name, over]) => {
    const within = [0, 0, 0, 0, 0];
    const us: number[] = [];
    let refused = 0;
    for (let seed = 1; seed <= CALIBRATIONS; seed++) {
      const draw = drawFrom(7000 + seed);
      const scene: BoardSceneOptions = {
        ...PHONE,
        ...over,
        seed,
        stretch: draw.normal(0, 0.003),
        bendMm: [draw.normal(0, 1), draw.normal(0, 1), draw.normal(0, 1)],
      };
      const result = calibrate(
        boardScene(scene).map(({ corners }) =>
          boardPictureOf(
            { widthPx: scene.widthPx, heightPx: scene.heightPx, rotationDeg: 0 },
            corners.map((each) => ({ ...each, sigmaPx: scene.noisePx })),
          ),
        ),
      );
      if (!result.ok) {
        refused++;
        continue;
      }
      const found = result.value;
      us.push(found.uLnFocal);
      const ratios = [
        Math.log(found.focalPx / scene.lens.focalPx) / found.uLnFocal,
        (found.cxPx - scene.lens.cxPx) / found.uCxPx,
        (found.cyPx - scene.lens.cyPx) / found.uCyPx,
        (found.k1 - scene.lens.k1) / found.uK1,
        (found.k2 - scene.lens.k2) / found.uK2,
      ];
      for (const [i, ratio] of ratios.entries()) if (Math.abs(ratio) < 1.96) within[i] = (within[i] ?? 0) + 1;
    }
    const median = us.sort((a, b) => a - b)[Math.floor(us.length / 2)];
    const kept = within.map((count) => (us.length === 0 ? '-' : share(count, us.length)));
    const u = median === undefined ? '-' : `${(100 * median).toFixed(3)} %`;
    return `| ${name} | ${u} | ${kept.join(' | ')} | ${refused} |`;
  });
}

const cv = await nodeOpencv();
const tables = [
  `Corners in ${PICTURES} computed pictures of 1200 x 900 px for each row (distances in px; "within U": of x and of y):`,
  '',
  '| picture | found | rms | most | within U | OpenCV: found | rms | most |',
  '| --- | --- | --- | --- | --- | --- | --- | --- |',
  ...finderRows(cv),
  '',
  `${CALIBRATIONS} simulated calibrations for each row, 4000 x 3000 px, corners marked with 0.2 px, print stretched by 0.3 % and bent by 1 mm`,
  '(standard deviations). How often U at 95 % holds the truth:',
  '',
  '| photos | u of the focal length, median | f | cx | cy | k1 | k2 | refused |',
  '| --- | --- | --- | --- | --- | --- | --- | --- |',
  ...calibrationRows(),
];
const [words] = readFileSync(PLACE, 'utf8').split(BEGIN);
writeFileSync(PLACE, `${words}${BEGIN}\n\n${tables.join('\n')}\n`);
