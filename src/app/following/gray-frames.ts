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
  for (const piece of piecesOf(clip, from, to)) {
    const kept = await takenUpTo(piece.to - 1, grayForwards(clip, frames, piece.from, piece.to));
    yield* kept.reverse();
  }
}

/** Frames from `from` to before `to`. */
type Stretch = { readonly from: number; readonly to: number };

export type GraysAbout = {
  readonly seed: Gray;
  /** Latest first. */
  readonly backwards: () => AsyncGenerator<GrayFrame>;
  readonly forwards: () => AsyncGenerator<GrayFrame>;
};

/**
 * A frame and those wanted before and after it; null where it does not decode. On the way to it a decoder passes the ones just before,
 * and stands before the next: neither are decoded again.
 */
export async function graysAbout(
  clip: ClipTrack,
  frames: readonly Frame[],
  seedIndex: number,
  { before, after }: { readonly before: Stretch; readonly after: Stretch },
): Promise<GraysAbout | null> {
  const begin = piecesOf(clip, before.from, seedIndex)[0]?.from ?? seedIndex;
  const run = grayForwards(clip, frames, begin, Math.max(after.to, seedIndex + 1));
  const passed = await takenUpTo(seedIndex, run);
  const seed = passed.pop();
  if (seed?.index !== seedIndex) return null;
  const goesOn = after.from === seedIndex + 1;
  if (!goesOn) await run.return(undefined);
  return {
    seed: seed.gray,
    forwards: () => (goesOn ? run : grayForwards(clip, frames, after.from, after.to)),
    backwards: async function* () {
      for (let last = passed.pop(); last; last = passed.pop()) if (last.index < before.to) yield last;
      yield* grayBackwards(clip, frames, before.from, Math.min(before.to, begin));
    },
  };
}

function piecesOf(clip: ClipTrack, from: number, to: number): readonly Stretch[] {
  const keys = clip.clock.times.flatMap(({ isKey }, index) => (isKey ? [index] : []));
  const mostKept = Math.floor(KEPT_BYTES / (clip.size.widthPx * clip.size.heightPx));
  return backwardPieces(from, to, keys, mostKept);
}

/** Copies. The run goes on after the last of them. */
async function takenUpTo(last: number, run: AsyncGenerator<GrayFrame>): Promise<GrayFrame[]> {
  const taken: GrayFrame[] = [];
  for (;;) {
    const { done, value } = await run.next();
    if (done) return taken;
    taken.push({ index: value.index, gray: { ...value.gray, values: value.gray.values.slice() } });
    if (value.index >= last) return taken;
  }
}

function grayOfPixels({ kind, widthPx, heightPx, bytes }: SamplePixels): Gray {
  if (kind === 'luma') return { widthPx, heightPx, values: bytes };
  return grayOf(new Uint8ClampedArray(bytes.buffer), widthPx, heightPx);
}
