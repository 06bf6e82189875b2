import type { Vec3 } from '../basics/rotation.ts';

/** A point of the chamber frame (mm) with its derivatives by the unknowns it depends on. */
export type WorldPoint = {
  readonly at: Vec3;
  readonly by: readonly { readonly index: number; readonly d: Vec3 }[];
};
