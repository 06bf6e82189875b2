/**
 * Simulated pictures of a wrench on an adjuster's hex, with truth; in three dimensions, not from the engine. World: the hex's axis is z,
 * towards the camera; the wrench turns in the plane z = 0; the arm lies in a plane with that axis, as a worm and its wheel have it.
 */
import { drawFrom } from '../../src/basics/random.ts';
import type { WrenchPicture } from '../../src/measurement/wrench-directions.ts';

type P3 = readonly [number, number, number];

export type WrenchScene = {
  readonly seed: number;
  readonly sigmaPx: number;
  /** How much worse the marks are than they say. */
  readonly worse?: number;
  readonly tiltDeg: readonly [number, number];
  /** Degrees of each application, in order; turned clockwise as the camera sees it. */
  readonly stepsDeg: readonly number[];
  /** The wrench rocks on the hex by up to this, either way. */
  readonly playDeg?: number;
  /** Another spot of the wrench is marked by this in each picture, along it, mm; standard deviation. */
  readonly spotMm?: number;
  /** First radial term of the lens, standard deviation. */
  readonly lensK1?: number;
  /** Degrees by which the wrench is put over on the hex for more pictures after the last application. */
  readonly putOverDeg?: readonly number[];
  /** How far off the focal length is that the file tells: standard deviation, of it. */
  readonly uFocal?: number;
  /** Null: the camera stands still. Else how far off the hand comes back and how far off it aims, mm, and how it rolls. */
  readonly hand: { readonly offMm: number; readonly aimMm?: number; readonly rollDeg: number } | null;
  /** After which applications a picture is taken; after each where it is not said. */
  readonly takenAfter?: readonly number[];
};

export type SeenWrench = {
  readonly pictures: readonly WrenchPicture[];
  readonly cameraStill: boolean;
  /** Of the wrench, from the first picture to the last. */
  readonly totalRad: number;
};

const RAD = Math.PI / 180;
const FOCAL_PX = 1530;

export function simulateWrench(scene: WrenchScene): SeenWrench {
  const draw = drawFrom(scene.seed);
  const lengthMm = draw.uniform(130, 280);
  const distanceMm = draw.uniform(450, 900);
  const tilt = draw.uniform(...scene.tiltDeg) * RAD;
  const towards = draw.uniform(0, 2 * Math.PI);
  const eye: P3 = [
    distanceMm * Math.sin(tilt) * Math.cos(towards),
    distanceMm * Math.sin(tilt) * Math.sin(towards),
    distanceMm * Math.cos(tilt),
  ];
  const aim: P3 = [draw.normal(0, 40), draw.normal(0, 40), draw.normal(0, 20)];
  const roll = draw.uniform(0, 2 * Math.PI);
  const begin = draw.uniform(0, 2 * Math.PI);
  const arm = armOf(draw);
  const uLnFocal = scene.uFocal ?? 0.035;
  const focalPx = FOCAL_PX * Math.exp(draw.normal(0, uLnFocal));
  const taken = scene.takenAfter ?? scene.stepsDeg.map((_step, i) => i + 1);
  const turnedAfter = (n: number) => scene.stepsDeg.slice(0, n).reduce((sum, step) => sum + step, 0) * RAD;
  const { hand, playDeg = 0, worse = 1, sigmaPx, spotMm = 1, lensK1 = 0.02, putOverDeg = [] } = scene;
  const lens = lensOf(draw.normal(0, lensK1));
  const turned = [0, ...taken].map((n) => turnedAfter(n) + draw.uniform(-playDeg, playDeg) * RAD);
  const last = taken.at(-1) ?? 0;
  const shown = [
    ...[0, ...taken].map((applicationsBefore, i) => ({ applicationsBefore, turn: turned[i] as number })),
    ...putOverDeg.map((deg) => ({ applicationsBefore: last, turn: (turned.at(-1) as number) + deg * RAD })),
  ];
  const pictures = shown.map(({ applicationsBefore, turn }): WrenchPicture => {
    const off = hand ? hand.offMm : 0;
    const from: P3 = [
      eye[0] + draw.normal(0, off),
      eye[1] + draw.normal(0, off),
      eye[2] + draw.normal(0, off),
    ];
    const aimOff = hand?.aimMm ?? off;
    const at: P3 = [aim[0] + draw.normal(0, aimOff), aim[1] + draw.normal(0, aimOff), aim[2]];
    const seen = cameraAt(from, at, roll + (hand ? draw.normal(0, hand.rollDeg * RAD) : 0));
    // Seen from +z with y of the picture down, clockwise is against the world's angle.
    const angle = begin - turn;
    const mark = (point: P3) => {
      const [x, y] = lens(seen(point));
      return {
        xPx: x + draw.normal(0, sigmaPx * worse),
        yPx: y + draw.normal(0, sigmaPx * worse),
        sigmaPx,
      };
    };
    const reach = lengthMm + draw.normal(0, spotMm);
    const tip: P3 = [reach * Math.cos(angle), reach * Math.sin(angle), 0];
    return {
      applicationsBefore,
      focalPx,
      uLnFocal,
      middlePx: [960, 540],
      centre: mark([0, 0, 0]),
      tip: mark(tip),
      arm: { pin: mark(arm.pin), camshaft: mark(arm.camshaft) },
    };
  });
  return {
    pictures,
    cameraStill: scene.hand === null,
    totalRad: (turned.at(-1) as number) - (turned[0] as number),
  };
}

function armOf(draw: ReturnType<typeof drawFrom>): { readonly pin: P3; readonly camshaft: P3 } {
  const armMm = draw.uniform(127, 165);
  const about = draw.uniform(0, 2 * Math.PI);
  // From the hex's axis: across it, or leaning to either side.
  const lean = draw.uniform(55, 125) * RAD;
  const out: P3 = [Math.sin(lean) * Math.cos(about), Math.sin(lean) * Math.sin(about), Math.cos(lean)];
  const camshaft: P3 = [
    draw.uniform(-30, 30) - 40 * out[0],
    draw.uniform(-30, 30) - 40 * out[1],
    draw.uniform(-60, -20),
  ];
  return {
    camshaft,
    pin: [camshaft[0] + armMm * out[0], camshaft[1] + armMm * out[1], camshaft[2] + armMm * out[2]],
  };
}

/** What a lens does to a picture of 1920 by 1080. */
function lensOf(k1: number): (place: readonly [number, number]) => readonly [number, number] {
  return ([x, y]) => {
    const [dx, dy] = [x - 960, y - 540];
    const more = 1 + (k1 * (dx * dx + dy * dy)) / FOCAL_PX ** 2;
    return [960 + more * dx, 540 + more * dy];
  };
}

/** A pinhole camera that looks at a point. */
function cameraAt(eye: P3, aim: P3, roll: number): (point: P3) => readonly [number, number] {
  const forward = unit([aim[0] - eye[0], aim[1] - eye[1], aim[2] - eye[2]]);
  const side = unit(crossed(forward, [Math.cos(roll), Math.sin(roll), 0.01]));
  const down = crossed(forward, side);
  return (point) => {
    const v: P3 = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
    const depth = dotted(forward, v);
    return [960 + (FOCAL_PX * dotted(side, v)) / depth, 540 + (FOCAL_PX * dotted(down, v)) / depth];
  };
}

const dotted = (a: P3, b: P3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const crossed = (a: P3, b: P3): P3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

function unit(v: P3): P3 {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
}
