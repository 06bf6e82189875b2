/** The frames of a clip as gray pictures, one after the other, forwards or backwards. For the worker: it carries the clip reader. */
import type { ClipTrack } from '../../captures/clip-track.browser.ts';
import { backwardPieces } from '../../frames/backward-pieces.ts';
import { ClipRun } from '../../frames/clip-run.browser.ts';
import type { Frame } from '../../frames/frame.ts';
import { type SamplePixels, samplePixels } from '../../frames/sample-pixels.browser.ts';
import { type Gray, grayOf } from '../../vision/gray.ts';

export type GrayFrame = { readonly index: number; readonly gray: Gray };

/** What is kept at most of pictures that wait for their turn backwards. */
const KEPT_BYTES = 160e6;

/** A frame's values are written over with the next but one. */
export async function* grayForwards(
  clip: ClipTrack,
  frames: readonly Frame[],
  from: number,
  to: number,
): AsyncGenerator<GrayFrame> {
  const run = new ClipRun(clip, frames, from);
  // The one who looks at a picture may hold on to it while the next is looked at.
  const spares: [Uint8Array | null, Uint8Array | null] = [null, null];
  try {
    for (;;) {
      const decoded = await run.step();
      if (!decoded || decoded.index >= to) {
        decoded?.sample.close();
        return;
      }
      const { index, sample } = decoded;
      try {
        if (index < from) continue;
        const pixels = await samplePixels(sample, spares[0]);
        spares[0] = spares[1];
        spares[1] = new Uint8Array(pixels.bytes.buffer);
        yield { index, gray: grayOfPixels(pixels) };
      } finally {
        sample.close();
      }
    }
  } finally {
    run.stop();
  }
}

/** From the frame before `to` back to `from`. */
export async function* grayBackwards(
  clip: ClipTrack,
  frames: readonly Frame[],
  from: number,
  to: number,
): AsyncGenerator<GrayFrame> {
  const keys = clip.clock.times.flatMap(({ isKey }, index) => (isKey ? [index] : []));
  const mostKept = Math.floor(KEPT_BYTES / (clip.size.widthPx * clip.size.heightPx));
  for (const piece of backwardPieces(from, to, keys, mostKept)) {
    const kept: GrayFrame[] = [];
    for await (const { index, gray } of grayForwards(clip, frames, piece.from, piece.to))
      kept.push({ index, gray: { ...gray, values: gray.values.slice() } });
    yield* kept.reverse();
  }
}

function grayOfPixels({ kind, widthPx, heightPx, bytes }: SamplePixels): Gray {
  if (kind === 'luma') return { widthPx, heightPx, values: bytes };
  return grayOf(new Uint8ClampedArray(bytes.buffer), widthPx, heightPx);
}
