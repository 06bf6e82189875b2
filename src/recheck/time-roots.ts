/** Certificates in a file as authorities give them out: PEM, one or several, or a single DER. */
import { findAll } from '@peculiar/utils/pem';
import { Certificate } from 'pkijs';
import { fail, ok, type Result } from '../basics/result.ts';

export type TimeRootsFailure = { readonly code: 'time-roots/none' };

const LIMIT_BYTES = 1e6;
const LIMIT_CERTIFICATES = 500;
/** Of a DER sequence. */
const SEQUENCE = 0x30;

export function readTimeRoots(file: Uint8Array): Result<readonly Uint8Array[], TimeRootsFailure> {
  if (file.length > LIMIT_BYTES) return fail({ code: 'time-roots/none' });
  try {
    const found =
      file[0] === SEQUENCE ? [file] : findAll(latin1(file), 'CERTIFICATE').map(({ data }) => data);
    for (const der of found) Certificate.fromBER(Uint8Array.from(der));
    if (found.length > 0 && found.length <= LIMIT_CERTIFICATES) return ok(found);
  } catch {
    // What the library throws at is no certificate.
  }
  return fail({ code: 'time-roots/none' });
}

function latin1(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
}
