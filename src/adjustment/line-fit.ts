/**
 * A line through points at given readings: where reading 0 lies and which way readings grow.
 *
 * Model    p(v) = p0 + v m, least squares in each coordinate, readings centred first.
 * Fails    one reading only: the line then points along x.
 */
export type ReadingLine = {
  readonly xMm: number;
  readonly yMm: number;
  readonly angleRad: number;
  /** Length in the plane for each unit of reading. */
  readonly scale: number;
};

export function lineThrough(
  points: readonly { readonly xMm: number; readonly yMm: number }[],
  readings: readonly number[],
): ReadingLine {
  const n = Math.min(points.length, readings.length);
  const mean = (get: (i: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += get(i);
    return sum / Math.max(n, 1);
  };
  const px = (i: number): number => points[i]?.xMm ?? 0;
  const py = (i: number): number => points[i]?.yMm ?? 0;
  const v = (i: number): number => readings[i] ?? 0;
  const [mv, mx, my] = [mean(v), mean(px), mean(py)];
  const spread = mean((i) => (v(i) - mv) ** 2);
  if (!(spread > 0)) return { xMm: mx - mv, yMm: my, angleRad: 0, scale: 1 };
  const slopeX = mean((i) => (v(i) - mv) * (px(i) - mx)) / spread;
  const slopeY = mean((i) => (v(i) - mv) * (py(i) - my)) / spread;
  return {
    xMm: mx - slopeX * mv,
    yMm: my - slopeY * mv,
    angleRad: Math.atan2(slopeY, slopeX),
    scale: Math.hypot(slopeX, slopeY),
  };
}
