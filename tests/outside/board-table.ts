/** Prints how U95 holds on every two photographs of the board, by how far apart they were seen from: `npx tsx` runs it. */
import { measureStroke, photographPairs } from './board-strokes.ts';

const BOUNDS_DEG = [0, 12, 20, 30, 90];
const lines = [false, true].flatMap((withTies) => {
  const all = photographPairs().map((pair) => ({
    ...pair,
    ...measureStroke({ ...pair, squares: 2, withTies }),
  }));
  return BOUNDS_DEG.slice(1).map((to, i) => {
    const from = BOUNDS_DEG[i] as number;
    const here = all.filter(({ apartDeg }) => apartDeg >= from && apartDeg < to);
    const middle = (values: readonly number[]): string =>
      [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]?.toFixed(1) ?? '';
    const held = here.filter(({ errorMm, U95Mm }) => Math.abs(errorMm) <= U95Mm).length;
    const errors = here.map(({ errorMm }) => Math.abs(errorMm));
    const cells = [
      withTies ? 'tape and tie points' : 'tape',
      `${from} to ${to}`,
      `${held} of ${here.length}`,
      middle(errors),
      Math.max(...errors).toFixed(1),
      middle(here.map(({ U95Mm }) => U95Mm)),
    ];
    return `| ${cells.join(' | ')} |\n`;
  });
});
process.stdout.write(lines.join(''));
