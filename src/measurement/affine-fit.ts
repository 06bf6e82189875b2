/**
 * The affine map that takes some places of a picture nearest to others.
 *
 * Model    p = A q + b, weighted least squares; places in thousands of pixels inside, so that all columns are of one size
 * Fails    null where all places lie on one line
 */
import { type Place, placeBy, placesFit } from './places-fit.ts';

export function affineFit(
  from: readonly Place[],
  to: readonly Place[],
  weights: readonly number[],
): ((place: Place) => Place) | null {
  const fit = placesFit(from.map(affineRow), to, weights);
  return fit && ((place) => placeBy(fit, affineRow(place)));
}

const affineRow = ([x, y]: Place) => [x / 1000, y / 1000, 1];
