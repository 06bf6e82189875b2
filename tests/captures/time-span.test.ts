import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { boxesIn } from '../../src/captures/heif-boxes.ts';
import { isoTime, movieTime } from '../../src/captures/movie-time.ts';
import { timeSpan } from '../../src/captures/time-span.ts';

const iso = (ms: number | undefined) => (ms === undefined ? null : new Date(ms).toISOString());

test.each([
  ['2026:05:04 10:20:30.12-07:00', '2026-05-04T17:20:30.120Z', '2026-05-04T17:20:30.120Z'],
  ['2026-05-04T10:20:30-0700', '2026-05-04T17:20:30.000Z', '2026-05-04T17:20:30.000Z'],
  ['2026-05-04T10:20:30.000Z', '2026-05-04T10:20:30.000Z', '2026-05-04T10:20:30.000Z'],
  // No zone: from Kiribati (+14) to the last ships on the date line (-12).
  ['2026:05:04 10:20:30', '2026-05-03T20:20:30.000Z', '2026-05-04T22:20:30.000Z'],
])('%s is between %s and %s', (written, earliest, latest) => {
  const span = timeSpan(written);
  expect([iso(span?.earliestMs), iso(span?.latestMs)]).toEqual([earliest, latest]);
});

test.each(['', 'yesterday', '2026:13:04 10:20:30', '2026[2J:05', '2026:05:04'])(
  '%j is no time',
  (written) => {
    expect(timeSpan(written)).toBeNull();
  },
);

/** Content of a file's movie box. */
function movieOf(name: string): DataView {
  const bytes = readFileSync(`tests/fixtures/media/${name}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const movie = boxesIn(view, 0, view.byteLength).find(({ kind }) => kind === 'moov');
  if (!movie) throw new Error(`${name} has no movie box`);
  return new DataView(bytes.buffer, bytes.byteOffset + movie.begin, movie.end - movie.begin);
}

test('the time in a movie’s header is the one that ffprobe gives; a zero is no time', () => {
  expect(movieTime(movieOf('header-time.mp4'))).toBe('2026-05-04T17:20:30.000Z');
  expect(movieTime(movieOf('h264-b-frames.mp4'))).toBeNull();
  expect(movieTime(new DataView(new ArrayBuffer(3)))).toBeNull();
});

test('a clock that was never set, or that is beyond all years, gives no time', () => {
  expect([0, -5, Number.NaN, Number.POSITIVE_INFINITY, 1e18].map(isoTime)).toEqual([
    null,
    null,
    null,
    null,
    null,
  ]);
  expect(isoTime(1_777_915_230_000)).toBe('2026-05-04T17:20:30.000Z');
});
