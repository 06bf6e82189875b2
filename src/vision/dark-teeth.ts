/** How dark a line is place by place, as the strokes of a tape on it are seen. */

/** Levels of 255: less is taken for nothing. */
const LEAST_DARK = 3;
/** Of the places: the darkest, which are strokes if there are any. */
const STRONGEST = 1 / 12;

/**
 * Darker than what lies besidePx to either side, over `unit`, what the darkest are; a shadow's edge has one side only. levels: a pixel apart.
 */
export function darkTeeth(
  levels: Float32Array,
  besidePx: number,
): { readonly dark: Float32Array; readonly unit: number } {
  const dark = levels.map((here, i) =>
    Math.max(0, Math.min(levels[i - besidePx] ?? here, levels[i + besidePx] ?? here) - here),
  );
  const strongest = dark
    .slice()
    .sort()
    .slice(-Math.max(6, Math.round(levels.length * STRONGEST)));
  const unit = Math.max(LEAST_DARK, strongest.reduce((sum, v) => sum + v, 0) / strongest.length);
  return { dark: dark.map((v) => Math.min(1.5, v / unit)), unit };
}

/** What the place s has over the place half a step on. */
export const toothAt = (dark: Float32Array, s: number, stepPx: number): number =>
  valueAt(dark, s) - valueAt(dark, s + stepPx / 2);

function valueAt(dark: Float32Array, s: number): number {
  const i = Math.min(dark.length - 2, Math.floor(s));
  return (dark[i] as number) + (s - i) * ((dark[i + 1] as number) - (dark[i] as number));
}
