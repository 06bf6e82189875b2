/**
 * The lens of a picture of which nothing is known but its size.
 *
 * Model    focal length over the picture's longer side: 0.78, as of phones
 * Assumes  square pixels, no distortion, the picture's middle on the line of sight
 * Source   from memory: 24 to 28 mm as of a 36 mm film
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Lens = { readonly middle: Point; readonly focalPx: number };

const USUAL_FOCAL = 0.78;

export const usualLens = ({ widthPx, heightPx }: Pick<Gray, 'widthPx' | 'heightPx'>): Lens => ({
  middle: [widthPx / 2, heightPx / 2],
  focalPx: USUAL_FOCAL * Math.max(widthPx, heightPx),
});
