// @ts-check
import { sightLines } from './render.mjs';

/** A point counts as visible where the line of sight meets the solids at the point itself, give or take the depth of a centre mark. */
const sameMm = 0.6;

/**
 * Checks every truth point against the solids: the marks must be seen, hidden graduations go, band points get their flag.
 * @param {string} folder @param {string} name @param {{ declarations: string, solids: readonly string[] }} scene @param {import('./camera.mjs').Camera} camera @param {ReturnType<typeof import('./truth.mjs').allPoints>} points
 */
export async function sight(folder, name, scene, camera, points) {
  const graduations = points.tapeGraduations ?? [];
  const marks = /** @type {const} */ (['chamberFace', 'clevisPin', 'camshaftEnd']);
  const asked = [
    ...marks.map((k) => points[k].mm),
    ...graduations.map((g) => nudged(g.mm)),
    ...points.clampBand.map((b) => b.mm),
  ];
  const found = await sightLines(folder, name, scene, camera.eye, asked);
  const misses = found.map(({ pointMm, hitMm }) => hitMm - pointMm);
  marks.forEach((mark, i) => {
    const depth = mark === 'chamberFace' ? 0.2 : 2.6;
    if (!(misses[i] > -0.2 && misses[i] < depth))
      throw new Error(
        `${name}: ${mark} is not seen, line of sight ends ${misses[i].toFixed(2)} mm beyond it`,
      );
  });
  const bandMisses = misses.slice(marks.length + graduations.length);
  return {
    ...points,
    ...(points.tapeGraduations && {
      tapeGraduations: graduations.filter((_, i) => Math.abs(misses[marks.length + i]) < sameMm),
    }),
    clampBand: points.clampBand.map((b, i) => ({
      ...b,
      visible: b.visible && Math.abs(bandMisses[i]) < sameMm,
    })),
  };

  /** A graduation's end lies on the blade's edge: look a little inside it. @param {import('./vectors.mjs').Vec3} mm @returns {import('./vectors.mjs').Vec3} */
  function nudged([x, y, z]) {
    return [x, y - 0.3, z];
  }
}
