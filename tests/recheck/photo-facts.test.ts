/** What a record says of a photo, held against the photo's own EXIF. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import type { Capture } from '../../src/captures/capture.ts';
import { photoSaid } from '../../src/recheck/photo-said.ts';
import { demoCapture } from '../bench/demo-capture.ts';
import { newKeyPair, packageBytes, REFUSED, recheckBytes, smallRecord } from '../evidence/small-package.ts';

const PLACE = 'pair-tape/released.jpg';
const photo = Uint8Array.from(readFileSync(`sample-media/${PLACE}`));

async function rechecked(said: Partial<Capture>) {
  const record = smallRecord([REFUSED]);
  const [first, ...others] = record.captures;
  if (!first) throw new Error('the example has captures');
  const captures = [{ ...demoCapture(first.id, PLACE), ...said }, ...others];
  const keys = await newKeyPair();
  const bytes = await packageBytes({
    record: { ...record, captures },
    keys,
    photos: new Map([[first.id, photo]]),
  });
  return (await recheckBytes(bytes)).checks.captures;
}

test('a record that repeats what its photo says holds', async () => {
  expect(await rechecked({})).toEqual({ answer: 'yes', differences: [] });
});

test('another time or focal length than the photo’s own is told, though all is sealed and signed', async () => {
  const { takenAt, focal35Mm } = demoCapture('any', PLACE);
  expect(await rechecked({ takenAt: '2026:01:01 12:00:00', focal35Mm: 99 })).toMatchObject({
    answer: 'no',
    differences: [
      { code: 'captures/facts-differ', fact: 'takenAt', recorded: '2026:01:01 12:00:00', found: takenAt },
      { code: 'captures/facts-differ', fact: 'focal35Mm', recorded: 99, found: focal35Mm },
    ],
  });
});

test.each(['exif-6.jpg', 'exif-6.png', 'exif-6.webp', 'photo.heic'])(
  '%s says what exiftool reads out of it',
  (name) => {
    const bytes = Uint8Array.from(readFileSync(`tests/fixtures/media/${name}`));
    expect(photoSaid(bytes)).toEqual({ takenAt: '2026:05:04 10:20:30.12-07:00', focal35Mm: 26 });
  },
);

test.each(['text.jpg', 'empty.jpg', 'truncated.jpg', 'garbage-tables.jpg', 'h264-b-frames.mp4'])(
  '%s says nothing, or nothing that is there',
  (name) => {
    const bytes = Uint8Array.from(readFileSync(`tests/fixtures/media/${name}`));
    expect([null, { takenAt: null, focal35Mm: null }]).toContainEqual(photoSaid(bytes));
  },
);

test('a spoilt photo never ends the recheck', () => {
  const draw = drawFrom(20260513);
  for (const name of ['exif-6.jpg', 'exif-6.png', 'exif-6.webp', 'photo.heic', 'turned.heic', 'photo.avif']) {
    const whole = Uint8Array.from(readFileSync(`tests/fixtures/media/${name}`));
    for (let trial = 0; trial < 300; trial++) {
      const bytes = whole.slice(0, Math.ceil(draw.uniform(whole.length / 4, whole.length * 2)));
      for (let i = 0; i < 1 + (trial % 8); i++)
        bytes[Math.floor(draw.uniform(0, bytes.length))] = Math.floor(draw.uniform(0, 256));
      expect(() => photoSaid(bytes)).not.toThrow();
    }
  }
});
