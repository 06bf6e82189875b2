/**
 * The few EXIF facts that matter here, read from a TIFF block.
 * Every offset in it is a stranger's: what lies outside the block, or has the wrong type, is taken as not written.
 * Source: Exif 2.32 (CIPA DC-008) 4.6 for the tags, TIFF 6.0 section 2 for the layout (clauses from memory).
 */
export type ExifFacts = {
  /** 1 to 8, as the camera wrote it. */
  readonly orientation: number | null;
  readonly focal35Mm: number | null;
  /** `YYYY:MM:DD hh:mm:ss`, with fraction and zone where written; never converted. */
  readonly takenAt: string | null;
};

export const NO_EXIF: ExifFacts = { orientation: null, focal35Mm: null, takenAt: null };

const TAG = {
  orientation: 0x0112,
  exifIfd: 0x8769,
  dateTimeOriginal: 0x9003,
  offsetTimeOriginal: 0x9011,
  subSecTimeOriginal: 0x9291,
  focalLengthIn35mmFilm: 0xa405,
} as const;

const ASCII = 2;
const SHORT = 3;
const LONG = 4;
const ENTRY_BYTES = 12;

type Tiff = { readonly view: DataView; readonly littleEndian: boolean };

export function exifFactsOf(block: DataView): ExifFacts {
  const tiff = openTiff(block);
  if (!tiff) return NO_EXIF;
  const ifd0 = block.getUint32(4, tiff.littleEndian);
  const exifIfd = numberAt(tiff, ifd0, TAG.exifIfd);
  const orientation = numberAt(tiff, ifd0, TAG.orientation);
  const focal35Mm = exifIfd === null ? null : numberAt(tiff, exifIfd, TAG.focalLengthIn35mmFilm);
  return {
    orientation: orientation !== null && orientation >= 1 && orientation <= 8 ? orientation : null,
    // Zero means unknown by the standard; beyond 5 m it is no lens.
    focal35Mm: focal35Mm !== null && focal35Mm >= 1 && focal35Mm <= 5000 ? focal35Mm : null,
    takenAt: exifIfd === null ? null : takenAt(tiff, exifIfd),
  };
}

function openTiff(view: DataView): Tiff | null {
  if (view.byteLength < 8) return null;
  const order = view.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return null;
  const littleEndian = order === 0x4949;
  return view.getUint16(2, littleEndian) === 42 ? { view, littleEndian } : null;
}

function takenAt(tiff: Tiff, exifIfd: number): string | null {
  const time = textAt(tiff, exifIfd, TAG.dateTimeOriginal, 19);
  // A camera without a clock writes blanks or zeros.
  if (time === null || !/[1-9]/.test(time)) return null;
  const fraction = textAt(tiff, exifIfd, TAG.subSecTimeOriginal, 9);
  const zone = textAt(tiff, exifIfd, TAG.offsetTimeOriginal, 6);
  return `${time}${fraction ? `.${fraction}` : ''}${zone ?? ''}`;
}

function numberAt(tiff: Tiff, ifd: number, tag: number): number | null {
  const { view, littleEndian } = tiff;
  const entry = entryAt(tiff, ifd, tag);
  if (entry === null || view.getUint32(entry + 4, littleEndian) !== 1) return null;
  const type = view.getUint16(entry + 2, littleEndian);
  if (type === SHORT) return view.getUint16(entry + 8, littleEndian);
  return type === LONG ? view.getUint32(entry + 8, littleEndian) : null;
}

function textAt(tiff: Tiff, ifd: number, tag: number, limit: number): string | null {
  const { view, littleEndian } = tiff;
  const entry = entryAt(tiff, ifd, tag);
  if (entry === null || view.getUint16(entry + 2, littleEndian) !== ASCII) return null;
  const count = view.getUint32(entry + 4, littleEndian);
  const begin = count <= 4 ? entry + 8 : view.getUint32(entry + 8, littleEndian);
  const end = Math.min(begin + Math.min(count, limit), view.byteLength);
  let text = '';
  for (let at = begin; at < end; at++) {
    const byte = view.getUint8(at);
    if (byte === 0) break;
    if (byte >= 0x20 && byte < 0x7f) text += String.fromCharCode(byte);
  }
  return text.trim() || null;
}

/** Where the tag's entry begins; null where the directory does not hold it. */
function entryAt({ view, littleEndian }: Tiff, ifd: number, tag: number): number | null {
  if (ifd < 8 || ifd + 2 > view.byteLength) return null;
  const count = view.getUint16(ifd, littleEndian);
  for (let i = 0, at = ifd + 2; i < count && at + ENTRY_BYTES <= view.byteLength; i++, at += ENTRY_BYTES) {
    if (view.getUint16(at, littleEndian) === tag) return at;
  }
  return null;
}
