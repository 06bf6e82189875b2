/**
 * The time of making in a movie's header.
 * Source: ISO/IEC 14496-12 8.2.2 (mvhd): seconds since 1904-01-01 UTC, 32 or 64 bits by its version (clause from memory).
 */
import { boxesIn, uintAt } from './heif-boxes.ts';

/** From 1904 to 1970. */
const EPOCH_S = 2_082_844_800;

/** Of the movie box's content, of which the header is the first. Null where no time was written. */
export function movieTime(movie: DataView): string | null {
  const header = boxesIn(movie, 0, movie.byteLength).find(({ kind }) => kind === 'mvhd');
  if (!header) return null;
  const version = uintAt(movie, header.begin, 1);
  const seconds = uintAt(movie, header.begin + 4, version === 1 ? 8 : 4);
  return isoTime((seconds - EPOCH_S) * 1000);
}

/** Null for what no device's clock says: before 1970, which is how 'not set' comes out, or after the year 9999. */
export function isoTime(ms: number): string | null {
  return ms > 0 && ms < 253_402_300_800_000 ? new Date(ms).toISOString() : null;
}
