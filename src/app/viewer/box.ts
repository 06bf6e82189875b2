/** An upright box on the screen. */
export type Box = {
  readonly leftCss: number;
  readonly topCss: number;
  readonly widthCss: number;
  readonly heightCss: number;
};

export function overlapCss2(a: Box, b: Box): number {
  const width = Math.min(a.leftCss + a.widthCss, b.leftCss + b.widthCss) - Math.max(a.leftCss, b.leftCss);
  const height = Math.min(a.topCss + a.heightCss, b.topCss + b.heightCss) - Math.max(a.topCss, b.topCss);
  return width > 0 && height > 0 ? width * height : 0;
}

export function areaCss2(box: Box): number {
  return box.widthCss * box.heightCss;
}
