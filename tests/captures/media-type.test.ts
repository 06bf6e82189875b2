import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FIRST_BYTES, mediaTypeOf } from '../../src/captures/media-type.ts';
import { fixture } from './fixtures.ts';

test.each([
  ['exif-1.jpg', 'image/jpeg'],
  ['exif-6.png', 'image/png'],
  ['exif-6.webp', 'image/webp'],
  ['photo.heic', 'image/heic'],
  ['photo.avif', 'image/avif'],
  ['h264-b-frames.mp4', 'video/mp4'],
  ['hevc.mp4', 'video/mp4'],
  ['rotated-90.mov', 'video/quicktime'],
  ['vp9.webm', 'video/webm'],
])('%s is told by its first bytes', (name, mediaType) => {
  expect(mediaTypeOf(fixture(name).subarray(0, FIRST_BYTES))).toEqual({ ok: true, value: mediaType });
});

function ftyp(...brands: string[]): Uint8Array {
  const [major = '', ...compatible] = brands;
  const text = `ftyp${major}\0\0\0\0${compatible.join('')}`;
  return Uint8Array.from([0, 0, 0, text.length + 4, ...[...text].map((c) => c.charCodeAt(0))]);
}

test.each([
  [['avif', 'mif1', 'miaf'], 'image/avif'],
  [['mif1', 'avif'], 'image/avif'],
  [['mif1', 'heic'], 'image/heic'],
  [['XYZW', 'mp42', 'isom'], 'video/mp4'],
  [['qt  '], 'video/quicktime'],
])('brands %j', (brands, mediaType) => {
  expect(mediaTypeOf(ftyp(...brands))).toEqual({ ok: true, value: mediaType });
});

test('a QuickTime file that names no brand begins with a box of its own', () => {
  const bytes = Uint8Array.from([0, 0, 0, 8, ...new TextEncoder().encode('wide')]);
  expect(mediaTypeOf(bytes)).toEqual({ ok: true, value: 'video/quicktime' });
});

test('Matroska that is no WebM is told apart by its document type', () => {
  const head = [0x1a, 0x45, 0xdf, 0xa3, 0x8b, 0x42, 0x82, 0x88, ...new TextEncoder().encode('matroska')];
  expect(mediaTypeOf(Uint8Array.from(head))).toEqual({ ok: true, value: 'video/x-matroska' });
});

test.each([
  ['raw camera file', ftyp('crx ', 'crx '), 'crx '],
  ['text', new TextEncoder().encode('Chock the wheels'), null],
  ['three bytes', Uint8Array.from([1, 2, 3]), null],
])('a %s is no picture, and what it says of itself is told', (_what, bytes, brand) => {
  expect(mediaTypeOf(bytes)).toMatchObject({ ok: false, failure: { code: 'captures/not-a-picture', brand } });
});

test('no bytes are an empty file', () => {
  expect(mediaTypeOf(new Uint8Array(0))).toEqual({ ok: false, failure: { code: 'captures/empty-file' } });
});

test('no bytes whatever make it throw', () => {
  const starts = fc.constantFrom('', 'ftyp', 'RIFF', '\x1a\x45\xdf\xa3', '\xff\xd8\xff');
  fc.assert(
    fc.property(
      starts,
      fc.uint8Array({ maxLength: 64 }),
      fc.integer({ min: 0, max: 4 }),
      (start, rest, shift) => {
        const head = [...start].map((c) => c.charCodeAt(0));
        mediaTypeOf(Uint8Array.from([...Array(shift).fill(0), ...head, ...rest]));
      },
    ),
  );
});
