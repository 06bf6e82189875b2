/**
 * A time as a camera wrote it, as what it can mean: one instant where its zone stands with it, else every instant that it
 * can be in some zone.
 *
 * Model    UTC = local time - offset; offsets of zones in use lie from -12 h to +14 h.
 * Source   EXIF: 'YYYY:MM:DD hh:mm:ss', Exif 2.32 (CIPA DC-008) 4.6.5; ISO 8601 with a zone as clips have it; the range of
 *          offsets: IANA time zone database (all from memory).
 */
export type TimeSpan = { readonly earliestMs: number; readonly latestMs: number };

const WRITTEN =
  /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)(?:\.(\d{1,9}))?\s*(?:(Z)|([+-])(\d\d):?(\d\d))?$/;
const HOUR_MS = 3_600_000;
const WEST_MS = 12 * HOUR_MS;
const EAST_MS = 14 * HOUR_MS;

/** Null where it is no time. */
export function timeSpan(written: string): TimeSpan | null {
  const parts = WRITTEN.exec(written);
  if (!parts) return null;
  const [, year, month, day, hour, minute, second, fraction = '0', isUtc, sign, zoneHours, zoneMinutes] =
    parts;
  const local = Date.UTC(
    Number(year),
    Number(month) - 1,
    Number(day),
    Number(hour),
    Number(minute),
    Number(second),
  );
  // A thirteenth month would quietly be the next year's first.
  if (new Date(local).getUTCMonth() !== Number(month) - 1) return null;
  const ms = local + Number(`0.${fraction}`) * 1000;
  if (isUtc) return { earliestMs: ms, latestMs: ms };
  if (sign === undefined) return { earliestMs: ms - EAST_MS, latestMs: ms + WEST_MS };
  const offsetMs = (sign === '-' ? -1 : 1) * (Number(zoneHours) * 60 + Number(zoneMinutes)) * 60_000;
  return { earliestMs: ms - offsetMs, latestMs: ms - offsetMs };
}
