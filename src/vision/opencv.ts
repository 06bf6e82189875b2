/**
 * The part of OpenCV that is used here, with types of our own: the package's declarations lack the marker detector and name
 * functions that do not exist when it runs. Every name is looked for when it starts (`asOpencv`).
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { VisionFailure } from './vision-failure.ts';

/** An object in OpenCV's own memory: nothing frees it but `delete`. */
export type Held = { delete(): void };

export type Mat = Held & {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data32S: Int32Array;
};

export type Size = { readonly width: number; readonly height: number };

/** Places count from the centre of the first pixel. */
export type KeyPoint = {
  readonly pt: { readonly x: number; readonly y: number };
  readonly angle: number;
  readonly response: number;
};

export type KeyPointVector = Held & {
  size(): number;
  get(index: number): KeyPoint;
  push_back(point: KeyPoint): void;
};

export type FeatureFinder = Held & {
  setFastThreshold(levels: number): void;
  detect(picture: Mat, points: KeyPointVector, mask: Mat): void;
  compute(picture: Mat, points: KeyPointVector, descriptors: Mat): void;
};

export type FeatureMatch = { readonly trainIdx: number; readonly distance: number };

/** `get` makes a new vector each time, to be deleted as well. */
export type MatchLists = Held & {
  size(): number;
  get(index: number): Held & { size(): number; get(index: number): FeatureMatch };
};

export type FeatureMatcher = Held & {
  knnMatch(query: Mat, train: Mat, into: MatchLists, count: number): void;
};

/** `get` makes a new Mat each time, to be deleted as well. */
export type MatVector = Held & { size(): number; get(index: number): Mat };

export type MarkerDictionary = Held & {
  generateImageMarker(marker: number, sidePx: number, into: Mat, borderCells: number): void;
};

export type MarkerDetectorSettings = Held & {
  adaptiveThreshWinSizeMin: number;
  adaptiveThreshWinSizeMax: number;
  adaptiveThreshWinSizeStep: number;
  minMarkerPerimeterRate: number;
  cornerRefinementMethod: number;
  errorCorrectionRate: number;
};

export type MarkerDetector = Held & {
  detectMarkers(picture: Mat, corners: MatVector, ids: Mat): void;
};

export type Opencv = {
  readonly Mat: new (rows?: number, cols?: number, type?: number) => Mat;
  readonly MatVector: new () => MatVector;
  readonly KeyPointVector: new () => KeyPointVector;
  readonly DMatchVectorVector: new () => MatchLists;
  readonly ORB: new (most: number) => FeatureFinder;
  readonly BFMatcher: new (norm: number) => FeatureMatcher;
  readonly NORM_HAMMING: number;
  readonly INTER_AREA: number;
  readonly resize: (from: Mat, into: Mat, size: Size, fx: number, fy: number, way: number) => void;
  readonly CV_8UC1: number;
  readonly DICT_4X4_50: number;
  readonly CORNER_REFINE_NONE: number;
  readonly CORNER_REFINE_SUBPIX: number;
  readonly CORNER_REFINE_CONTOUR: number;
  readonly getPredefinedDictionary: (name: number) => MarkerDictionary;
  readonly aruco_DetectorParameters: new () => MarkerDetectorSettings;
  readonly aruco_RefineParameters: new (
    minRepDistance: number,
    errorCorrectionRate: number,
    checkAllOrders: boolean,
  ) => Held;
  readonly aruco_ArucoDetector: new (
    dictionary: MarkerDictionary,
    settings: MarkerDetectorSettings,
    refine: Held,
  ) => MarkerDetector;
  /** The text of a thrown number. */
  readonly exceptionFromPtr: (address: number) => { readonly msg: string };
};

const PARTS: Readonly<Record<keyof Opencv, 'function' | 'number'>> = {
  Mat: 'function',
  MatVector: 'function',
  KeyPointVector: 'function',
  DMatchVectorVector: 'function',
  ORB: 'function',
  BFMatcher: 'function',
  NORM_HAMMING: 'number',
  INTER_AREA: 'number',
  resize: 'function',
  CV_8UC1: 'number',
  DICT_4X4_50: 'number',
  CORNER_REFINE_NONE: 'number',
  CORNER_REFINE_SUBPIX: 'number',
  CORNER_REFINE_CONTOUR: 'number',
  getPredefinedDictionary: 'function',
  aruco_DetectorParameters: 'function',
  aruco_RefineParameters: 'function',
  aruco_ArucoDetector: 'function',
  exceptionFromPtr: 'function',
};

/** To be asked once, when it has started: what is missing would else show as a mistake of ours, much later. */
export function asOpencv(started: object): Result<Opencv, VisionFailure> {
  const names = Object.entries(PARTS)
    .filter(([name, type]) => typeof Reflect.get(started, name) !== type)
    .map(([name]) => name);
  // Every name and its kind has just been looked at; the signatures are ours to keep.
  return names.length === 0 ? ok(started as Opencv) : fail({ code: 'vision/parts-missing', names });
}
