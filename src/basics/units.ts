/** Millimetres and radians inside, always; inches and degrees are for people. */
export const MM_PER_INCH = 25.4;

export function mmFromInches(inches: number): number {
  return inches * MM_PER_INCH;
}

export function inchesFromMm(mm: number): number {
  return mm / MM_PER_INCH;
}

/** Pound-force per square inch: 0.45359237 kg x 9.80665 m/s^2 on (25.4 mm)^2. */
const KPA_PER_PSI = 6.894757293168361;

export function kpaFromPsi(psi: number): number {
  return psi * KPA_PER_PSI;
}

export function psiFromKpa(kpa: number): number {
  return kpa / KPA_PER_PSI;
}

export function degFromRad(rad: number): number {
  return (rad * 180) / Math.PI;
}

export function radFromDeg(deg: number): number {
  return (deg * Math.PI) / 180;
}
