/** Millimetres and radians inside, always; inches and degrees are for people. */
export const MM_PER_INCH = 25.4;

export function mmFromInches(inches: number): number {
  return inches * MM_PER_INCH;
}

export function inchesFromMm(mm: number): number {
  return mm / MM_PER_INCH;
}

export function degFromRad(rad: number): number {
  return (rad * 180) / Math.PI;
}

export function radFromDeg(deg: number): number {
  return (deg * Math.PI) / 180;
}
