/**
 * The linear light, 0 to 1, of each level of 255 as stored.
 *
 * Source   sRGB curve: IEC 61966-2-1:1999 (from memory)
 */
export const LINEAR_LIGHT = Float64Array.from({ length: 256 }, (_, level) => {
  const coded = level / 255;
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
});

/** Between two levels, by a straight line. */
export function linearAt(level: number): number {
  const low = Math.floor(level);
  const a = LINEAR_LIGHT[low] as number;
  return a + (level - low) * ((LINEAR_LIGHT[Math.min(255, low + 1)] as number) - a);
}
