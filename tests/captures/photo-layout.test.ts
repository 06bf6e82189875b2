/** Sizes as make-media.sh made the files; ffprobe and exiftool read the same. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { photoLayout } from '../../src/captures/photo-layout.ts';
import { fixture, viewOf } from './fixtures.ts';

const PHOTOS = [
  ['exif-1.jpg', 'image/jpeg', 64, 48, 1],
  ['exif-6.jpg', 'image/jpeg', 48, 64, 1],
  ['bare.jpg', 'image/jpeg', 64, 48, 0],
  ['exif-6.png', 'image/png', 48, 64, 1],
  ['exif-6.webp', 'image/webp', 48, 64, 1],
  ['lossless.webp', 'image/webp', 48, 64, 0],
  ['photo.heic', 'image/heic', 256, 192, 1],
  ['turned.heic', 'image/heic', 256, 192, 1],
  ['photo.avif', 'image/avif', 256, 192, 1],
] as const;

describe.each(PHOTOS)('%s', (name, mediaType, widthPx, heightPx, exifBlocks) => {
  const bytes = fixture(name);

  test('says its stored size and where its EXIF lies', () => {
    const layout = photoLayout(viewOf(bytes), mediaType);
    expect(layout).toMatchObject({ ok: true, value: { stored: { widthPx, heightPx } } });
    const ranges = layout.ok ? layout.value.exif : [];
    expect(ranges).toHaveLength(exifBlocks);
    for (const { begin } of ranges)
      expect(['II', 'MM']).toContain(String.fromCharCode(...bytes.slice(begin, begin + 2)));
  });

  test('is damaged wherever it is cut', () => {
    for (let length = 0; length < bytes.length; length++)
      expect(photoLayout(viewOf(bytes.slice(0, length)), mediaType).ok, `cut at ${length}`).toBe(false);
  });

  test('never throws, and never points outside, whatever is changed in it', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.nat(255)), { maxLength: 12 }), (changes) => {
        const changed = bytes.slice();
        for (const [at, value] of changes) changed[at] = value;
        const layout = photoLayout(viewOf(changed), mediaType);
        if (!layout.ok) return;
        expect(layout.value.stored.widthPx).toBeGreaterThan(0);
        for (const { begin, end } of layout.value.exif) {
          expect(begin).toBeLessThanOrEqual(end);
          expect(end).toBeLessThanOrEqual(changed.length);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('never throws on any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (any) => void photoLayout(viewOf(any), mediaType)),
    );
  });
});

test('a HEIC carries its turn outside EXIF', () => {
  const upright = (name: string) => {
    const layout = photoLayout(viewOf(fixture(name)), 'image/heic');
    return layout.ok ? layout.value.ownUpright : layout.failure;
  };
  expect(upright('photo.heic')).toEqual({ rotationDeg: 0, mirrored: false });
  expect(upright('turned.heic')).toEqual({ rotationDeg: 270, mirrored: false });
});

test('what a camera appends behind a JPEG does no harm', () => {
  const bytes = Uint8Array.from([...fixture('exif-1.jpg'), ...fixture('bare.jpg'), 1, 2, 3]);
  expect(photoLayout(viewOf(bytes), 'image/jpeg')).toMatchObject({
    ok: true,
    value: { stored: { widthPx: 64, heightPx: 48 } },
  });
});

test('a WebP whose EXIF begins with the name that JPEG has is read behind it', () => {
  const plain = fixture('exif-6.webp');
  const at = photoLayout(viewOf(plain), 'image/webp');
  const [range] = at.ok ? at.value.exif : [];
  if (!range) throw new Error('No EXIF');
  const name = new TextEncoder().encode('Exif\0\0');
  const bytes = Uint8Array.from([...plain.slice(0, range.begin), ...name, ...plain.slice(range.begin)]);
  const view = viewOf(bytes);
  view.setUint32(range.begin - 4, range.end - range.begin + 6, true);
  view.setUint32(4, view.getUint32(4, true) + 6, true);
  expect(photoLayout(view, 'image/webp')).toMatchObject({
    ok: true,
    value: { exif: [{ begin: range.begin + 6, end: range.end + 6 }] },
  });
});
