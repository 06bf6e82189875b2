/**
 * The ZIP container of a stranger's package, read by the rule that every byte of it is laid down: each header is written anew
 * from the four things that it may say (path, size, checksum, place) and compared. What another program packed does not pass.
 * Nothing is read whose size was not first held against the file's.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type ByteSource, bytesOf } from '../evidence/byte-source.ts';
import { PACKAGE_LIMIT_FILES } from '../evidence/manifest.ts';
import { isPackagePath, PATH_LIMIT_CHARACTERS } from '../evidence/package-path.ts';
import {
  DIRECTORY_HEADER_BYTES,
  directoryHeader,
  END_BYTES,
  endRecord,
  localHeader,
  ZIP_LIMIT_BYTES,
  type ZipEntry,
} from '../evidence/zip-layout.ts';
import type { ContainerFault } from './difference.ts';

export type StoredFile = ZipEntry & { readonly from: number };

/** manifest.json, signature.json and a time stamp beside the files that the manifest lists. */
const LIMIT_FILES = PACKAGE_LIMIT_FILES + 3;

export async function readContainer(
  source: ByteSource,
): Promise<Result<readonly StoredFile[], ContainerFault>> {
  const { sizeBytes } = source;
  if (sizeBytes < END_BYTES || sizeBytes > ZIP_LIMIT_BYTES)
    return fail({ code: 'container/size', sizeBytes, limitBytes: ZIP_LIMIT_BYTES });
  const end = await readEnd(source);
  if (!end.ok) return end;
  const { count, directoryAt } = end.value;
  const directory = await bytesOf(source, directoryAt, sizeBytes - END_BYTES);
  return readEntries(source, directory, directoryAt, count);
}

async function readEnd({
  sizeBytes,
  read,
}: ByteSource): Promise<Result<{ count: number; directoryAt: number }, ContainerFault>> {
  const endAt = sizeBytes - END_BYTES;
  const bytes = await bytesOf({ sizeBytes, read }, endAt, sizeBytes);
  if (bytes.length < END_BYTES) return fail({ code: 'container/end', atByte: endAt });
  const view = viewOf(bytes);
  const count = view.getUint16(8, true);
  const directoryBytes = view.getUint32(12, true);
  const directoryAt = view.getUint32(16, true);
  const odd = firstOther(bytes, endRecord(count, directoryBytes, directoryAt));
  if (odd !== null) return fail({ code: 'container/end', atByte: endAt + odd });
  if (count > LIMIT_FILES)
    return fail({ code: 'container/too-many-files', files: count, limit: LIMIT_FILES });
  const mostBytes = count * (DIRECTORY_HEADER_BYTES + PATH_LIMIT_CHARACTERS);
  if (directoryAt + directoryBytes !== endAt || directoryBytes > mostBytes)
    return fail({ code: 'container/end', atByte: endAt });
  return ok({ count, directoryAt });
}

async function readEntries(
  source: ByteSource,
  directory: Uint8Array,
  directoryAt: number,
  count: number,
): Promise<Result<readonly StoredFile[], ContainerFault>> {
  const files: StoredFile[] = [];
  const met = new Set<string>();
  let at = 0;
  let inDirectory = 0;
  for (let i = 0; i < count; i++) {
    const atByte = directoryAt + inDirectory;
    const entry = entryAt(directory.subarray(inDirectory));
    if (!entry) return fail({ code: 'container/end', atByte });
    const { path, sizeBytes } = entry;
    if (!isPackagePath(path)) return fail({ code: 'container/strange-name', path, atByte });
    if (met.has(path)) return fail({ code: 'container/name-twice', path, atByte });
    met.add(path);

    const local = localHeader(entry);
    const from = at + local.length;
    if (from + sizeBytes > directoryAt) return fail({ code: 'container/header', path, atByte });
    const oddLocal = firstOther(await bytesOf(source, at, from), local);
    if (oddLocal !== null) return fail({ code: 'container/header', path, atByte: at + oddLocal });
    const header = directoryHeader(entry, at);
    const odd = firstOther(directory.subarray(inDirectory, inDirectory + header.length), header);
    if (odd !== null) return fail({ code: 'container/header', path, atByte: atByte + odd });

    files.push({ ...entry, from });
    at = from + sizeBytes;
    inDirectory += header.length;
  }
  return at === directoryAt && inDirectory === directory.length
    ? ok(files)
    : fail({ code: 'container/end', atByte: at });
}

function entryAt(bytes: Uint8Array): ZipEntry | null {
  if (bytes.length < DIRECTORY_HEADER_BYTES) return null;
  const view = viewOf(bytes);
  const nameBytes = Math.min(view.getUint16(28, true), PATH_LIMIT_CHARACTERS);
  const name = bytes.subarray(DIRECTORY_HEADER_BYTES, DIRECTORY_HEADER_BYTES + nameBytes);
  return {
    path: String.fromCharCode(...name),
    crc32: view.getUint32(16, true).toString(16).padStart(8, '0'),
    sizeBytes: view.getUint32(24, true),
  };
}

/** Place of the first byte that is not as it must be. */
function firstOther(bytes: Uint8Array, must: Uint8Array): number | null {
  const at = must.findIndex((byte, i) => byte !== bytes[i]);
  return at < 0 ? null : at;
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
