import { readFileSync } from 'node:fs';
import { BufferSource, EncodedPacketSink, Input, MP4 } from 'mediabunny';
import { assert, expect, test } from 'vitest';
import { isAbort } from '../../src/captures/time-limit.browser.ts';

test('a clip reader that was closed while it read is no mistake of the program', async () => {
  const bytes = readFileSync(new URL('../fixtures/wrench/wrench.mp4', import.meta.url));
  const input = new Input({ formats: [MP4], source: new BufferSource(bytes) });
  const track = await input.getPrimaryVideoTrack();
  assert(track);
  input.dispose();
  const reason: unknown = await new EncodedPacketSink(track).getPacket(0).catch((thrown: unknown) => thrown);
  expect(isAbort(reason)).toBe(true);
});

test('what a browser ends is an abort, what breaks is not', () => {
  expect(isAbort(new DOMException('', 'AbortError'))).toBe(true);
  expect(isAbort(new TypeError('no such thing'))).toBe(false);
  expect(isAbort('AbortError')).toBe(false);
});
