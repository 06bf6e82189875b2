/** Crosses of followed places on the screen, turned by an eighth as all automatic marks are; those of what stands still are small. */
import { type ScreenPoint, screenFromFrame, type View } from '../viewer/view-transform.ts';
import type { Cross } from './follow-lines.ts';

/** Dark edge and light core, as the viewer draws marks; finer for the many that stand still. */
export const CROSSES = {
  moving: { innerCss: 3, outerCss: 9, edgeCss: 5, coreCss: 2 },
  still: { innerCss: 1.2, outerCss: 3.6, edgeCss: 3, coreCss: 1.25 },
} as const;

/** An SVG path, for the page and for a canvas alike. */
export function crossesPath(view: View, crosses: readonly Cross[], of: keyof typeof CROSSES): string {
  return crosses
    .filter(({ kind }) => (kind === 'still') === (of === 'still'))
    .map((cross) => crossPath(screenFromFrame(view, cross), CROSSES[of]))
    .join('');
}

function crossPath(
  { xCss, yCss }: ScreenPoint,
  { innerCss, outerCss }: { readonly innerCss: number; readonly outerCss: number },
): string {
  return [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ]
    .map(([sx = 0, sy = 0]) => {
      const at = (reach: number) => `${(xCss + sx * reach).toFixed(2)} ${(yCss + sy * reach).toFixed(2)}`;
      return `M${at(innerCss)}L${at(outerCss)}`;
    })
    .join('');
}
