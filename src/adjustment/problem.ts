/** What goes into an adjustment: views with their marks, which camera and which pose each has, references, hand of the wheel end. */
import type { Mark } from '../marks/mark.ts';
import type { BrakeState } from '../marks/view.ts';
import type { References } from '../references/reference.ts';

/** Means and standard uncertainties, pixels of the upright picture; the unknowns as in camera.ts. */
export type CameraPrior = {
  readonly focalPx: number;
  readonly uLnFocal: number;
  readonly cxPx: number;
  readonly cyPx: number;
  readonly uCxPx: number;
  readonly uCyPx: number;
  readonly k1: number;
  readonly uK1: number;
  readonly k2: number;
  readonly uK2: number;
};

/**
 * A mark with followedFrom is of a spot beside the thing, the same spot in every view that has one from the same seed. The seed's view
 * holds its mark twice: as it was set, of the thing, and sharp, with followedFrom naming itself, of the spot. So how far the seed was
 * off is common to all that were followed from it.
 */
export type ProblemView = {
  readonly state: BrakeState;
  /** Index into cameras. */
  readonly camera: number;
  /** Views of one pose share its index, from 0. */
  readonly pose: number;
  readonly marks: readonly Mark[];
  /** A further frame of a clip that core views are of, seen from another place; side views come after the core views. */
  readonly isSide: boolean;
};

export type Problem = {
  readonly cameras: readonly CameraPrior[];
  readonly poseCount: number;
  readonly views: readonly ProblemView[];
  readonly references: References;
  /** +1: the camshaft lies clockwise of the rod's outward direction in the picture, -1: the other hand. */
  readonly hand: 1 | -1;
  /** From where the pictures were taken, as far as their marks do not tell (view-directions.ts): each from a place of its own, all from near
   * each other, or by one hand that filmed. */
  readonly places: 'own' | 'near' | 'filmed';
};

/** Depth away from the camera is hand * z in the chamber frame (right-handed: x outwards, y towards the camshaft). */
export function zFromDepth(depthMm: number, hand: 1 | -1): number {
  return hand * depthMm;
}
