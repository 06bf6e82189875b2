/**
 * The ZIP container of a package, of which every byte is laid down: files stored and not compressed, one after the other
 * without a gap, no comment, no extra field, one fixed time. So the reader can write down what a header must be and compare,
 * and a bit that was turned anywhere shows. What is stored cannot swell: a ZIP bomb is not possible.
 *
 * Source: APPNOTE.TXT 6.3 (PKWARE) 4.3.7, 4.3.12, 4.3.16 for the fields (clauses from memory).
 */
import { utf8FromText } from '../basics/utf8.ts';

export type ZipEntry = {
  /** ASCII, see package-path.ts. */
  readonly path: string;
  readonly sizeBytes: number;
  /** Eight digits, hexadecimal. */
  readonly crc32: string;
};

const LOCAL_HEADER_BYTES = 30;
export const DIRECTORY_HEADER_BYTES = 46;
export const END_BYTES = 22;
/** Sizes and places are 32-bit numbers, and the largest says 'see elsewhere'. */
export const ZIP_LIMIT_BYTES = 2 ** 32 - 2;

const LOCAL_SIGNATURE = 0x04034b50;
const DIRECTORY_SIGNATURE = 0x02014b50;
const END_SIGNATURE = 0x06054b50;
/** Files that are only stored need version 1.0 of the format. */
const VERSION = 10;
/** 1 January 1980, the format's zero: when the package was made stands in the manifest. */
const DATE = 0x21;

export function localHeader(entry: ZipEntry): Uint8Array<ArrayBuffer> {
  const { bytes, view, name } = header(LOCAL_HEADER_BYTES, LOCAL_SIGNATURE, entry.path);
  commonFields(view, 4, entry, name.length);
  return bytes;
}

export function directoryHeader(entry: ZipEntry, localAt: number): Uint8Array<ArrayBuffer> {
  const { bytes, view, name } = header(DIRECTORY_HEADER_BYTES, DIRECTORY_SIGNATURE, entry.path);
  view.setUint16(4, VERSION, true);
  commonFields(view, 6, entry, name.length);
  view.setUint32(42, localAt, true);
  return bytes;
}

export function endRecord(
  fileCount: number,
  directoryBytes: number,
  directoryAt: number,
): Uint8Array<ArrayBuffer> {
  const { bytes, view } = header(END_BYTES, END_SIGNATURE, '');
  view.setUint16(8, fileCount, true);
  view.setUint16(10, fileCount, true);
  view.setUint32(12, directoryBytes, true);
  view.setUint32(16, directoryAt, true);
  return bytes;
}

function header(fixedBytes: number, signature: number, path: string) {
  const name = utf8FromText(path);
  const bytes = new Uint8Array(fixedBytes + name.length);
  bytes.set(name, fixedBytes);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, signature, true);
  return { bytes, view, name };
}

/** From 'version needed' to 'name length': the same run of fields in both headers. Flags, method and time are 0. */
function commonFields(view: DataView, at: number, { crc32, sizeBytes }: ZipEntry, nameBytes: number): void {
  view.setUint16(at, VERSION, true);
  view.setUint16(at + 8, DATE, true);
  view.setUint32(at + 10, Number.parseInt(crc32, 16), true);
  view.setUint32(at + 14, sizeBytes, true);
  view.setUint32(at + 18, sizeBytes, true);
  view.setUint16(at + 22, nameBytes, true);
}
