/**
 * Where coded markers are, to about a pixel: OpenCV's detector, without its own refinement.
 *
 * Model    squares with a black border whose 4 x 4 inner cells, read after rectifying, equal a marker's code exactly
 * Assumes  the family DICT_4X4_50. No bit is corrected: among 16 bits a corrected one would let every 160th square of
 *          chance through instead of every 2700th, for six markers in four turns.
 * Fails    never: what is not recognised is not returned.
 * Source   S. Garrido-Jurado et al., Pattern Recognition 47 (2014) 2280-2292 (from memory), as built into OpenCV 4.13.
 */
import type { Gray } from './gray.ts';
import type { Opencv } from './opencv.ts';
import type { Point, Quad } from './point.ts';
import type { Keep } from './with-opencv.ts';

export type RoughMarker = { readonly marker: number; readonly cornersPx: Quad };

/** OpenCV counts from the centre of the first pixel. */
const HALF_PX = 0.5;
/** Below it a cell has less than two pixels. */
const LEAST_SIDE_PX = 11;

export function detectMarkers(cv: Opencv, keep: Keep, gray: Gray): RoughMarker[] {
  const picture = keep(new cv.Mat(gray.heightPx, gray.widthPx, cv.CV_8UC1));
  picture.data.set(gray.values);
  const settings = keep(new cv.aruco_DetectorParameters());
  settings.cornerRefinementMethod = cv.CORNER_REFINE_NONE;
  settings.errorCorrectionRate = 0;
  settings.minMarkerPerimeterRate = (4 * LEAST_SIDE_PX) / Math.max(gray.widthPx, gray.heightPx);
  const dictionary = keep(cv.getPredefinedDictionary(cv.DICT_4X4_50));
  const refine = keep(new cv.aruco_RefineParameters(10, 0, true));
  const detector = keep(new cv.aruco_ArucoDetector(dictionary, settings, refine));
  const corners = keep(new cv.MatVector());
  const ids = keep(new cv.Mat());
  detector.detectMarkers(picture, corners, ids);
  return Array.from({ length: corners.size() }, (_, index) => ({
    marker: ids.data32S[index] ?? -1,
    cornersPx: quadOf(keep(corners.get(index)).data32F),
  }));
}

function quadOf(xy: Float32Array): Quad {
  const point = (corner: number): Point => [
    (xy[2 * corner] ?? Number.NaN) + HALF_PX,
    (xy[2 * corner + 1] ?? Number.NaN) + HALF_PX,
  ];
  return [point(0), point(1), point(2), point(3)];
}
