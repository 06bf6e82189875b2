/** Readings with a limit that somebody typed beside them: taken as read, since no uncertainty was typed. */
import type { OtherReading } from './wheel-end.ts';

export function isReadingOver(reading: OtherReading): reading is OtherReading & { readonly limitMm: number } {
  const { valueMm, limitMm, limitIs } = reading;
  if (limitMm === null) return false;
  return limitIs === 'greatest' ? valueMm > limitMm : valueMm < limitMm;
}
