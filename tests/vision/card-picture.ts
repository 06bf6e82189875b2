/**
 * Pictures of the printed target with known corners, made without any code of the detection: a pinhole camera looks at a
 * tilted card on a cluttered ground; ink, light, blur, tone and noise follow as in a camera, in this order.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { CARD } from '../../src/references/target-card.ts';
import { TARGET_MARKERS } from '../../src/references/target-markers.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { blur } from './blur.ts';
import { jpegLoss } from './jpeg-loss.ts';

export type CardPictureOptions = {
  readonly seed: number;
  /** Side of a marker in the middle of the card, were it not tilted. */
  readonly markerPx: number;
  readonly tiltDeg: number;
  /** Direction in the card's plane about which it is tilted. */
  readonly tiltAboutDeg: number;
  readonly turnDeg: number;
  readonly blurPx: number;
  /** Of 255 levels. */
  readonly noise: number;
  /** Light falls by this share from one side of the picture to the other. */
  readonly lightFall: number;
  /** How far ink runs out over every edge. */
  readonly inkMm: number;
  /** Exponent that codes light into levels; null for sRGB. */
  readonly toneExponent: number | null;
  /** Markers with a hand or grease over them. */
  readonly covered: readonly number[];
  /** null for a picture that was not coded. */
  readonly jpegQuality: number | null;
};

export const PLAIN: CardPictureOptions = {
  seed: 1,
  markerPx: 40,
  tiltDeg: 0,
  tiltAboutDeg: 90,
  turnDeg: 3,
  blurPx: 0.8,
  noise: 2,
  lightFall: 0.3,
  inkMm: 0,
  toneExponent: null,
  covered: [],
  jpegQuality: null,
};

export type CardPicture = {
  readonly gray: Gray;
  /** Where each corner truly is. */
  readonly corner: (marker: number, corner: number) => Point;
};

const FOCAL_PX = 3000;
const MARKER_MM = 24;
const MARGIN_PX = 40;
/** An edge is placed to a sixteenth of a pixel over each pixel that it crosses, and much better along all of them. */
const FINE = 8;
/** No marker reaches further up the card. */
const MARKERS_END_MM = 31;
const PAPER = 0.8;
const INK = 0.04;

export function cardPicture(options: CardPictureOptions): CardPicture {
  const camera = cameraOf(options);
  const rim = ([0, 1, 0, 1] as const).map((right, i) =>
    camera.seen([right * CARD.widthMm, i < 2 ? 0 : -CARD.heightMm]),
  );
  const least = (axis: 0 | 1) => Math.floor(Math.min(...rim.map((p) => p[axis]))) - MARGIN_PX;
  const most = (axis: 0 | 1) => Math.ceil(Math.max(...rim.map((p) => p[axis]))) + MARGIN_PX;
  const draw = drawFrom(options.seed);
  // A part of a pixel, so that corners fall anywhere in theirs.
  const origin: Point = [least(0) + draw.uniform(0, 1), least(1) + draw.uniform(0, 1)];
  const [width, height] = [most(0) - least(0), most(1) - least(1)];
  const surface = surfaceOf(options);
  const light = new Float64Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = (dx: number, dy: number) => surface(camera.onCard(origin[0] + x + dx, origin[1] + y + dy));
      light[y * width + x] = pixelMean(at) * (1 - options.lightFall * (x / width));
    }
  const blurred = blur(light, width, height, options.blurPx);
  const values = Uint8Array.from(blurred, (value) =>
    Math.max(
      0,
      Math.min(255, Math.round(255 * coded(value, options.toneExponent) + draw.normal(0, options.noise))),
    ),
  );
  const { jpegQuality } = options;
  const kept = jpegQuality === null ? values : jpegLoss(values, width, height, jpegQuality);
  return {
    gray: { widthPx: width, heightPx: height, values: kept },
    corner: (marker, corner) => {
      const place = TARGET_MARKERS.find((each) => each.marker === marker)?.cornersMm[corner];
      if (!place) throw new Error(`no marker ${marker}`);
      const [x, y] = camera.seen(place);
      return [x - origin[0], y - origin[1]];
    },
  };
}

/** Fine only where an edge runs through the pixel: nothing on the card or round it is smaller than one. */
function pixelMean(at: (dx: number, dy: number) => number): number {
  const corners = [at(0, 0), at(1, 0), at(0, 1), at(1, 1)] as const;
  if (corners.every((value) => value === corners[0])) return corners[0];
  let sum = 0;
  for (let j = 0; j < FINE; j++) for (let i = 0; i < FINE; i++) sum += at((i + 0.5) / FINE, (j + 0.5) / FINE);
  return sum / FINE ** 2;
}

function cameraOf({ markerPx, tiltDeg, tiltAboutDeg, turnDeg }: CardPictureOptions) {
  const radians = (deg: number) => (deg * Math.PI) / 180;
  const [tilt, about, turn] = [radians(tiltDeg), radians(tiltAboutDeg), radians(turnDeg)];
  const axis = [Math.cos(about), Math.sin(about), 0];
  const rotated = (p: readonly number[]) => {
    const [px, py] = [p[0] as number, p[1] as number];
    const q = [Math.cos(turn) * px - Math.sin(turn) * py, Math.sin(turn) * px + Math.cos(turn) * py, 0];
    const along = (axis[0] as number) * (q[0] as number) + (axis[1] as number) * (q[1] as number);
    const across = [
      -(axis[2] as number) * (q[1] as number),
      (axis[2] as number) * (q[0] as number),
      (axis[0] as number) * (q[1] as number) - (axis[1] as number) * (q[0] as number),
    ];
    return [0, 1, 2].map(
      (i) =>
        (q[i] as number) * Math.cos(tilt) +
        (across[i] as number) * Math.sin(tilt) +
        (axis[i] as number) * along * (1 - Math.cos(tilt)),
    );
  };
  const distanceMm = (FOCAL_PX * MARKER_MM) / markerPx;
  const h = [rotated([1, 0]), rotated([0, 1])] as [number[], number[]];
  const seen = ([u, v]: Point): Point => {
    const [cu, cv] = [u - CARD.widthMm / 2, v + CARD.heightMm / 2];
    const [X, Y, Z] = [0, 1, 2].map((i) => cu * (h[0][i] as number) + cv * (h[1][i] as number)) as [
      number,
      number,
      number,
    ];
    return [(FOCAL_PX * X) / (distanceMm + Z), (FOCAL_PX * Y) / (distanceMm + Z)];
  };
  const [h0x, h0y, h0z] = h[0] as [number, number, number];
  const [h1x, h1y, h1z] = h[1] as [number, number, number];
  /** The ray through a pixel meets the card's plane: cu h0 + cv h1 + (0, 0, d) lies along (x, y, f). */
  const onCard = (x: number, y: number): Point => {
    const [a, b] = [FOCAL_PX * h0x - x * h0z, FOCAL_PX * h1x - x * h1z];
    const [c, d] = [FOCAL_PX * h0y - y * h0z, FOCAL_PX * h1y - y * h1z];
    const det = a * d - b * c;
    const [right0, right1] = [x * distanceMm, y * distanceMm];
    const cu = (d * right0 - b * right1) / det;
    const cv = (a * right1 - c * right0) / det;
    return [cu + CARD.widthMm / 2, cv - CARD.heightMm / 2];
  };
  return { seen, onCard };
}

/** Share of the light that a point of the card's plane sends back. */
function surfaceOf({ seed, inkMm, covered }: CardPictureOptions): (place: Point) => number {
  const draw = drawFrom(seed + 1000);
  const spots = Array.from({ length: 40 }, () => ({
    u: draw.uniform(-60, 260),
    v: draw.uniform(-90, 50),
    width: draw.uniform(3, 40),
    height: draw.uniform(3, 25),
    back: draw.uniform(0.03, 0.5),
  }));
  const ground = ([u, v]: Point) =>
    spots.find((s) => u > s.u && u < s.u + s.width && v > s.v && v < s.v + s.height)?.back ?? 0.15;
  const black = ([u, v]: Point): boolean => {
    if (v < -MARKERS_END_MM || v > 0) return false;
    const marker = TARGET_MARKERS.find(
      ({ cornersMm: [a, , b] }) => u >= a[0] && u < b[0] && v >= a[1] && v < b[1],
    );
    if (!marker) return false;
    const cell = (from: number, at: number) => Math.floor(((at - from) / MARKER_MM) * 6) - 1;
    return marker.rows[cell(marker.cornersMm[0][1], v)]?.[cell(marker.cornersMm[0][0], u)] !== '1';
  };
  const reach = Math.abs(inkMm);
  const inked = ([u, v]: Point): boolean => {
    if (inkMm === 0) return black([u, v]);
    const round = [-reach, reach].flatMap((du) => [-reach, reach].map((dv): Point => [u + du, v + dv]));
    return inkMm > 0 ? round.some(black) : round.every(black);
  };
  return ([u, v]) => {
    const hidden = TARGET_MARKERS.find(
      ({ cornersMm: [a, , b] }) => u > a[0] + 4 && u < b[0] + 9 && v > a[1] + 5 && v < b[1] + 12,
    );
    if (hidden && covered.includes(hidden.marker)) return 0.3;
    if (u < 0 || u > CARD.widthMm || v > 0 || v < -CARD.heightMm) return ground([u, v]);
    return inked([u, v]) ? INK : PAPER;
  };
}

function coded(light: number, exponent: number | null): number {
  const share = Math.max(0, Math.min(1, light));
  if (exponent !== null) return share ** exponent;
  return share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055;
}
