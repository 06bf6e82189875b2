import type { Chamber, ChamberFamily } from '../../src/finding/chamber.ts';

export const INCH = 25.4;

export function chamber(family: ChamberFamily, type: string, more: Partial<Chamber> = {}): Chamber {
  return { family, type, strokeClass: 'standard', ratedStrokeMm: null, markedLimitMm: null, ...more };
}
