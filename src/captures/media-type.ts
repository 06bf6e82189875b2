/** The kind of a file from its first bytes; its name and the browser's guess are never asked. */
import { fail, ok, type Result } from '../basics/result.ts';
import type { NotAPicture } from './capture-failure.ts';

const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp', 'image/heic', 'image/avif'] as const;
const CLIP_TYPES = ['video/mp4', 'video/quicktime', 'video/webm', 'video/x-matroska'] as const;

export type PhotoType = (typeof PHOTO_TYPES)[number];
export type ClipType = (typeof CLIP_TYPES)[number];
export type MediaType = PhotoType | ClipType;

/** Enough for the list of brands that phones write. */
export const FIRST_BYTES = 512;

const HEIC_BRANDS = /^(hei[cxms]|hev[cmsx]|mif1|msf1)$/;
const AVIF_BRANDS = /^avi[fs]$/;
const MP4_BRANDS = /^(iso[m2-9]|mp4[12]|avc1|hvc1|3g[ep2].|M4V.|MSNV|XAVC|dash|cmf.|f4v )$/;
/** Boxes that a QuickTime file may begin with when it names no brand. */
const QUICKTIME_BOXES = ['moov', 'mdat', 'wide', 'pnot'];

export function isPhotoType(mediaType: MediaType): mediaType is PhotoType {
  return mediaType.startsWith('image/');
}

export function mediaTypeOf(
  first: Uint8Array,
): Result<MediaType, { readonly code: 'captures/empty-file' } | NotAPicture> {
  if (first.length === 0) return fail({ code: 'captures/empty-file' });
  if (startsWith(first, 0xff, 0xd8, 0xff)) return ok('image/jpeg');
  if (startsWith(first, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return ok('image/png');
  if (ascii(first, 0, 4) === 'RIFF' && ascii(first, 8, 4) === 'WEBP') return ok('image/webp');

  const box = ascii(first, 4, 4);
  if (box === 'ftyp') {
    const brands = brandsOf(first);
    const mediaType = typeOfBrands(brands);
    return mediaType ? ok(mediaType) : notAPicture(first, brands[0] ?? null);
  }
  if (QUICKTIME_BOXES.includes(box)) return ok('video/quicktime');
  if (startsWith(first, 0x1a, 0x45, 0xdf, 0xa3)) {
    const docType = docTypeOf(first);
    if (docType === 'webm') return ok('video/webm');
    return docType === 'matroska' ? ok('video/x-matroska') : notAPicture(first, docType ?? null);
  }
  return notAPicture(first, null);
}

function notAPicture(first: Uint8Array, brand: string | null) {
  const firstBytes = [...first.subarray(0, 16)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return fail({ code: 'captures/not-a-picture', firstBytes, brand } as const);
}

/** The major brand first, then the compatible ones. */
function brandsOf(first: Uint8Array): string[] {
  const end = Math.min(first.length, new DataView(first.buffer, first.byteOffset, 4).getUint32(0));
  const brands = [ascii(first, 8, 4)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(ascii(first, at, 4));
  return brands;
}

function typeOfBrands(brands: readonly string[]): MediaType | undefined {
  const [major = ''] = brands;
  if (major === 'qt  ') return 'video/quicktime';
  if (AVIF_BRANDS.test(major)) return 'image/avif';
  if (HEIC_BRANDS.test(major))
    return brands.some((brand) => AVIF_BRANDS.test(brand)) ? 'image/avif' : 'image/heic';
  return brands.some((brand) => MP4_BRANDS.test(brand)) ? 'video/mp4' : undefined;
}

/** Element 0x4282 of the EBML header, RFC 8794 section 11.2.4; its parts are short, so sizes of one byte are all it needs. */
function docTypeOf(first: Uint8Array): string | undefined {
  for (let at = 5; at + 3 < Math.min(first.length, 100); at++) {
    const size = first[at + 2] ?? 0;
    if (first[at] === 0x42 && first[at + 1] === 0x82 && size > 0x80 && size < 0x90)
      return ascii(first, at + 3, size & 0x0f);
  }
  return undefined;
}

function startsWith(bytes: Uint8Array, ...begin: readonly number[]): boolean {
  return begin.every((byte, i) => bytes[i] === byte);
}

function ascii(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length)).replace(/[^\x20-\x7e]/g, '');
}
