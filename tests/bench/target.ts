/**
 * npm run bench:target: how well the printed target's corners are found, against three ways of the detector itself, on
 * pictures with known corners. Writes docs/target.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { drawFrom } from '../../src/basics/random.ts';
import { TARGET_MARKERS } from '../../src/references/target-markers.ts';
import { findTarget } from '../../src/vision/find-target.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Opencv } from '../../src/vision/opencv.ts';
import { withOpencv } from '../../src/vision/with-opencv.ts';
import { type CardPicture, type CardPictureOptions, cardPicture, PLAIN } from '../vision/card-picture.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';

const WAYS = ['none', 'window', 'contour', 'fit'] as const;
type Way = (typeof WAYS)[number];
type Seen = { readonly marker: number; readonly corner: number; readonly xPx: number; readonly yPx: number };
type Row = { readonly name: string; readonly options: readonly CardPictureOptions[] };
type Counted = {
  expected: number;
  errorsPx: number[];
  inSigma: number[];
  sigmasPx: number[];
  times: number[];
};

const PICTURES_EACH = Number(process.argv[2] ?? 12);
const PLACE = 'docs/target.md';
const BEGIN = '<!-- tables: npm run bench:target -->';

const usual = (seed: number, over: Partial<CardPictureOptions>): CardPictureOptions => {
  const draw = drawFrom(seed);
  return {
    ...PLAIN,
    seed,
    tiltDeg: draw.uniform(0, 40),
    tiltAboutDeg: draw.uniform(0, 180),
    turnDeg: draw.uniform(0, 360),
    blurPx: draw.uniform(0.6, 1.2),
    noise: draw.uniform(1, 4),
    lightFall: draw.uniform(0, 0.6),
    inkMm: draw.uniform(-0.05, 0.1),
    toneExponent: 1 / draw.uniform(2, 2.6),
    jpegQuality: 90,
    ...over,
  };
};

const row = (name: string, over: Partial<CardPictureOptions>, base = 100): Row => ({
  name,
  options: Array.from({ length: PICTURES_EACH }, (_, index) => usual(base + index, over)),
});

const ROWS: readonly Row[] = [
  ...[15, 20, 30, 40, 60, 90, 120].map((markerPx) => row(`side ${markerPx} px`, { markerPx })),
  ...[0, 20, 40].map((tiltDeg) => row(`side 40 px, tilt ${tiltDeg}°`, { markerPx: 40, tiltDeg })),
  ...[0.5, 1, 2, 3].map((blurPx) => row(`side 40 px, blur ${blurPx} px`, { markerPx: 40, blurPx })),
  ...[1, 4, 10].map((noise) => row(`side 40 px, noise ${noise} of 255`, { markerPx: 40, noise })),
  row('side 40 px, light falls by 0.8', { markerPx: 40, lightFall: 0.8 }),
  row('side 40 px, ink 0.2 mm over', { markerPx: 40, inkMm: 0.2 }),
  row('side 40 px, coded as light^(1/1.6)', { markerPx: 40, toneExponent: 1 / 1.6 }),
  row('side 40 px, JPEG quality 60', { markerPx: 40, jpegQuality: 60 }),
];

const cv = await nodeOpencv();
const table = ROWS.map(tableLine).join('\n');
const kept = readFileSync(PLACE, 'utf8').split(BEGIN)[0] ?? '';
writeFileSync(
  PLACE,
  `${kept}${BEGIN}

${PICTURES_EACH} pictures a line, seeds from 100 on; where a line does not say otherwise: tilt 0 to 40° about any axis, any turn, blur
0.6 to 1.2 px (standard deviation), noise 1 to 4 of 255 levels, light falling by up to 0.6 across the picture, ink -0.05 to
0.1 mm over its edge, light coded with an exponent of 1/2 to 1/2.6, JPEG quality 90. Errors: root mean square of x and y.

| pictures | markers found: detector, ours | none, px | window, px | contour, px | ours, px | stated, px | error / stated | worst | ms |
| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
${table}
`,
);

function tableLine({ name, options }: Row): string {
  const newCount = (): Counted => ({ expected: 0, errorsPx: [], inSigma: [], sigmasPx: [], times: [] });
  const counts = { none: newCount(), window: newCount(), contour: newCount(), fit: newCount() };
  for (const each of options) {
    const picture = cardPicture(each);
    for (const way of WAYS) count(counts[way], picture, way);
  }
  const { none, fit } = counts;
  const found = ({ errorsPx, expected }: Counted) =>
    `${Math.round((100 * errorsPx.length) / 8 / expected)} %`;
  const cells = [
    name,
    `${found(none)}, ${found(fit)}`,
    ...WAYS.map((way) => digits(rms(counts[way].errorsPx), 3)),
    digits(rms(fit.sigmasPx), 3),
    digits(rms(fit.inSigma), 2),
    digits(Math.max(...fit.inSigma.map(Math.abs)), 1),
    digits([...fit.times].sort((a, b) => a - b)[Math.floor(fit.times.length / 2)] ?? Number.NaN, 0),
  ];
  console.log(cells.join(' | '));
  return `| ${cells.join(' | ')} |`;
}

function count(into: Counted, picture: CardPicture, way: Way): void {
  into.expected += TARGET_MARKERS.length;
  const begin = performance.now();
  const corners = way === 'fit' ? fitted(picture.gray) : detected(cv, picture.gray, way);
  into.times.push(performance.now() - begin);
  for (const { marker, corner, xPx, yPx, sigmaPx } of corners) {
    const [x, y] = picture.corner(marker, corner);
    into.errorsPx.push(xPx - x, yPx - y);
    into.sigmasPx.push(sigmaPx);
    into.inSigma.push((xPx - x) / sigmaPx, (yPx - y) / sigmaPx);
  }
}

function fitted(gray: Gray) {
  const found = findTarget(cv, gray, TARGET_MARKERS);
  if (!found.ok) throw new Error(found.failure.code);
  return found.value.corners;
}

/** The detector with one of its own refinements, as it comes. */
function detected(
  opencv: Opencv,
  gray: Gray,
  way: Exclude<Way, 'fit'>,
): (Seen & { readonly sigmaPx: number })[] {
  const methods = {
    none: opencv.CORNER_REFINE_NONE,
    window: opencv.CORNER_REFINE_SUBPIX,
    contour: opencv.CORNER_REFINE_CONTOUR,
  };
  const found = withOpencv(opencv, (keep) => {
    const picture = keep(new opencv.Mat(gray.heightPx, gray.widthPx, opencv.CV_8UC1));
    picture.data.set(gray.values);
    const settings = keep(new opencv.aruco_DetectorParameters());
    settings.cornerRefinementMethod = methods[way];
    const dictionary = keep(opencv.getPredefinedDictionary(opencv.DICT_4X4_50));
    const refine = keep(new opencv.aruco_RefineParameters(10, 3, true));
    const detector = keep(new opencv.aruco_ArucoDetector(dictionary, settings, refine));
    const corners = keep(new opencv.MatVector());
    const ids = keep(new opencv.Mat());
    detector.detectMarkers(picture, corners, ids);
    return Array.from({ length: corners.size() }, (_, index) => ({
      marker: ids.data32S[index] ?? -1,
      xy: Array.from(keep(corners.get(index)).data32F),
    }));
  });
  if (!found.ok) throw new Error(found.failure.code);
  return found.value
    .filter(({ marker }) => marker < TARGET_MARKERS.length)
    .flatMap(({ marker, xy }) =>
      [0, 1, 2, 3].map((corner) => ({
        marker,
        corner,
        xPx: (xy[2 * corner] ?? Number.NaN) + 0.5,
        yPx: (xy[2 * corner + 1] ?? Number.NaN) + 0.5,
        sigmaPx: 1,
      })),
    );
}

function rms(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
}

function digits(value: number, count: number): string {
  return Number.isFinite(value) ? value.toFixed(count) : '-';
}
