/** The facts are those that exiftool 12.57 wrote and reads back. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exifFactsOf, NO_EXIF } from '../../src/captures/exif.ts';
import { photoLayout } from '../../src/captures/photo-layout.ts';
import { fixture, viewOf } from './fixtures.ts';

function blockOf(name: string, mediaType: Parameters<typeof photoLayout>[1]): Uint8Array {
  const bytes = fixture(name);
  const layout = photoLayout(viewOf(bytes), mediaType);
  const range = layout.ok ? layout.value.exif[0] : undefined;
  if (!range) throw new Error(`No EXIF in ${name}`);
  return bytes.slice(range.begin, range.end);
}

test.each([
  ['exif-1.jpg', 'image/jpeg', 1],
  ['exif-2.jpg', 'image/jpeg', 2],
  ['exif-3.jpg', 'image/jpeg', 3],
  ['exif-6.jpg', 'image/jpeg', 6],
  ['exif-8.jpg', 'image/jpeg', 8],
  ['exif-6.png', 'image/png', 6],
  ['exif-6.webp', 'image/webp', 6],
  ['photo.heic', 'image/heic', 1],
  ['turned.heic', 'image/heic', 1],
] as const)('%s', (name, mediaType, orientation) => {
  expect(exifFactsOf(viewOf(blockOf(name, mediaType)))).toEqual({
    orientation,
    focal35Mm: 26,
    takenAt: '2026:05:04 10:20:30.12-07:00',
  });
});

/** A block of one directory and an EXIF directory, little-endian, written here so that single values can be wrong. */
function block(orientation: number, focal: number, time: string): DataView {
  const view = new DataView(new ArrayBuffer(100));
  const entry = (at: number, tag: number, type: number, count: number, value: number) => {
    view.setUint16(at, tag, true);
    view.setUint16(at + 2, type, true);
    view.setUint32(at + 4, count, true);
    view.setUint32(at + 8, value, true);
  };
  view.setUint16(0, 0x4949);
  view.setUint16(2, 42, true);
  view.setUint32(4, 8, true);
  view.setUint16(8, 2, true);
  entry(10, 0x0112, 3, 1, orientation);
  entry(22, 0x8769, 4, 1, 40);
  view.setUint16(40, 2, true);
  entry(42, 0xa405, 3, 1, focal);
  entry(54, 0x9003, 2, 20, 70);
  [...time].forEach((c, i) => {
    view.setUint8(70 + i, c.charCodeAt(0));
  });
  return view;
}

test('a camera without lens or clock says so with zeros and blanks', () => {
  expect(exifFactsOf(block(0, 0, '    :  :     :  :  '))).toEqual(NO_EXIF);
  expect(exifFactsOf(block(9, 6000, '0000:00:00 00:00:00'))).toEqual(NO_EXIF);
  expect(exifFactsOf(block(6, 24, '2026:05:04 10:20:30'))).toEqual({
    orientation: 6,
    focal35Mm: 24,
    takenAt: '2026:05:04 10:20:30',
  });
});

test('control characters do not get out of a text', () => {
  expect(exifFactsOf(block(1, 24, '2026\x1b[2J:05')).takenAt).toBe('2026[2J:05');
});

test('no bytes whatever, and no cut or change of a real block, make it throw', () => {
  const real = blockOf('exif-8.jpg', 'image/jpeg');
  const check = (bytes: Uint8Array) => {
    const facts = exifFactsOf(viewOf(bytes));
    expect(facts.takenAt?.length ?? 0).toBeLessThanOrEqual(35);
  };
  fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), check));
  fc.assert(
    fc.property(
      fc.nat(real.length),
      fc.array(fc.tuple(fc.nat(real.length - 1), fc.nat(255)), { maxLength: 8 }),
      (length, changes) => {
        const bytes = real.slice(0, length);
        for (const [at, value] of changes) if (at < length) bytes[at] = value;
        check(bytes);
      },
    ),
    { numRuns: 2000 },
  );
});
