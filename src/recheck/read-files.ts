/** Every file of the container hashed once, in one pass; the few that are documents are kept, where they are not absurdly large. */

import { FIRST_BYTES, isPhotoType, mediaTypeOf } from '../captures/media-type.ts';
import { type ByteFacts, type ByteSource, bytesOf, factsOf, sourceOfBytes } from '../evidence/byte-source.ts';
import type { Hashes } from '../evidence/hashes.ts';
import { MANIFEST_LIMIT_BYTES } from '../evidence/manifest.ts';
import { roleOfPath, TIME_STAMP_PATH } from '../evidence/package-path.ts';
import { RECORD_LIMIT_CHARACTERS } from '../record/open-record.ts';
import { PHOTO_LIMIT_BYTES, type PhotoSaid, photoSaid } from './photo-said.ts';
import type { StoredFile } from './read-container.ts';
import { TOKEN_LIMIT_BYTES } from './time-stamp.ts';

export type ReadFile = {
  readonly path: string;
  /** As the container's header says. */
  readonly stated: Pick<ByteFacts, 'sizeBytes' | 'crc32'>;
  readonly facts: ByteFacts;
  /** Null: not a document, or larger than any document is. */
  readonly bytes: Uint8Array<ArrayBuffer> | null;
  /** Null: no photo that can be read. */
  readonly photo: PhotoSaid | null;
};

export type Files = ReadonlyMap<string, ReadFile>;

/** Several times what the largest vehicle with a clip of each wheel end comes to. */
const DOCUMENT_LIMITS_BYTES: Readonly<Record<string, number>> = {
  'manifest.json': MANIFEST_LIMIT_BYTES,
  'signature.json': 4e3,
  /** A name that people typed may take more bytes than characters. */
  'record.json': 1.2 * RECORD_LIMIT_CHARACTERS,
  'results.json': 40e6,
  [TIME_STAMP_PATH]: TOKEN_LIMIT_BYTES,
};

export async function readFiles(
  source: ByteSource,
  stored: readonly StoredFile[],
  hashes: Hashes,
): Promise<Files> {
  const files = new Map<string, ReadFile>();
  for (const { path, sizeBytes, crc32, from } of stored) {
    const isKept = sizeBytes <= (DOCUMENT_LIMITS_BYTES[path] ?? -1);
    const isCapture = roleOfPath(path) === 'capture' && sizeBytes <= PHOTO_LIMIT_BYTES;
    const mayBePhoto =
      isCapture && isPhoto(await bytesOf(source, from, from + Math.min(FIRST_BYTES, sizeBytes)));
    const bytes = isKept || mayBePhoto ? await bytesOf(source, from, from + sizeBytes) : null;
    const facts = bytes
      ? await factsOf(sourceOfBytes(bytes).read(0, bytes.length), hashes)
      : await factsOf(source.read(from, from + sizeBytes), hashes);
    const photo = mayBePhoto && bytes ? photoSaid(bytes) : null;
    files.set(path, { path, stated: { sizeBytes, crc32 }, facts, bytes: isKept ? bytes : null, photo });
  }
  return files;
}

/** Clips are large and are only hashed, in pieces. */
function isPhoto(first: Uint8Array): boolean {
  const kind = mediaTypeOf(first);
  return kind.ok && isPhotoType(kind.value);
}
