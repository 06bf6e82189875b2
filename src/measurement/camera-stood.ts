/**
 * Whether the camera stood where it was, by what is fixed in the pictures: hex, camshaft end and clevis pin, the brake released.
 *
 * Model    chi2 = sum over the three places and all pictures of |place - mean|^2 / sigma^2, sigma^2 = mark's^2 + (SETTLES x arm)^2;
 *          it stood where so large a chi2 comes by chance more often than STOOD_FROM_P
 * Assumes  the arm comes back to its place with each release
 * Fails    never; a camera that moved by less than the marks tell passes: what that does to a direction is within the marks' own u
 */
import { chiSquareUpperTail } from '../basics/chi-square.ts';
import type { ArmedPicture, MarkedPoint } from './wrench-directions.ts';

const STOOD_FROM_P = 1e-3;
/** Of the arm's length: a released arm comes to rest within half a millimetre (common practice, no source). */
const SETTLES = 0.003;

export function cameraStood(pictures: readonly ArmedPicture[]): boolean {
  const armPx = pictures.reduce(
    (most, { arm: { pin, camshaft } }) =>
      Math.max(most, Math.hypot(pin.xPx - camshaft.xPx, pin.yPx - camshaft.yPx)),
    0,
  );
  const fixed = [
    pictures.map(({ centre }) => centre),
    pictures.map(({ arm }) => arm.camshaft),
    pictures.map(({ arm }) => arm.pin),
  ];
  const chiSquare = fixed.reduce((sum, places) => sum + scatter(places, SETTLES * armPx), 0);
  return chiSquareUpperTail(chiSquare, 2 * fixed.length * (pictures.length - 1)) > STOOD_FROM_P;
}

function scatter(places: readonly MarkedPoint[], settlesPx: number): number {
  let [weights, x, y, squares] = [0, 0, 0, 0];
  const from = places[0] as MarkedPoint;
  for (const { xPx, yPx, sigmaPx } of places) {
    const weight = 1 / (sigmaPx ** 2 + settlesPx ** 2);
    const [dx, dy] = [xPx - from.xPx, yPx - from.yPx];
    weights += weight;
    x += weight * dx;
    y += weight * dy;
    squares += weight * (dx * dx + dy * dy);
  }
  return Math.max(0, squares - (x * x + y * y) / weights);
}
