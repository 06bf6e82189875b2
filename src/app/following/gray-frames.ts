/**
 * Frames of a clip as gray pictures. Whoever asks for them may keep them; bytes that are no longer needed come back as spares. For the
 * worker: it carries the clip reader.
 */
import type { ClipTrack } from '../../captures/clip-track.browser.ts';
import { backwardPieces } from '../../frames/backward-pieces.ts';
import { ClipRun } from '../../frames/clip-run.browser.ts';
import type { Frame } from '../../frames/frame.ts';
import { type SamplePixels, samplePixels } from '../../frames/sample-pixels.browser.ts';
import { grayOf } from '../../vision/gray.ts';
import type { GrayFrame, Stretch } from './gray-task.ts';

export type GraySource = {
  readonly clip: ClipTrack;
  readonly frames: readonly Frame[];
  readonly spares: Uint8Array<ArrayBuffer>[];
};

/** What is kept at most of pictures that wait for their turn backwards. */
const KEPT_BYTES = 160e6;

/**
 * The seed; of those before it the ones that a decoder passes on its way there, latest first; those after it; the others before it.
 * So what is about the seed is decoded once. Ends without the seed where it does not decode.
 */
export async function* graysAbout(
  source: GraySource,
  seedIndex: number,
  before: Stretch,
  after: Stretch,
): AsyncGenerator<GrayFrame> {
  const begin = piecesOf(source, { from: before.from, to: seedIndex })[0]?.from ?? seedIndex;
  const run = grayForwards(source, { from: begin, to: Math.max(after.to, seedIndex + 1) });
  const passed = await takenUpTo(source, seedIndex, run);
  const seed = passed.pop();
  if (seed?.index !== seedIndex) return;
  yield seed;
  for (let last = passed.pop(); last; last = passed.pop()) if (last.index < before.to) yield last;
  if (after.from === seedIndex + 1) yield* run;
  else {
    await run.return(undefined);
    yield* grayForwards(source, after);
  }
  yield* grayBackwards(source, { from: before.from, to: Math.min(before.to, begin) });
}

async function* grayForwards(
  { clip, frames, spares }: GraySource,
  { from, to }: Stretch,
): AsyncGenerator<GrayFrame> {
  const run = new ClipRun(clip, frames, from);
  try {
    for (;;) {
      const decoded = await run.step();
      if (!decoded || decoded.index >= to) {
        decoded?.sample.close();
        return;
      }
      const { index, sample } = decoded;
      let pixels: SamplePixels;
      try {
        if (index < from) continue;
        pixels = await samplePixels(sample, spares.pop() ?? null);
      } finally {
        sample.close();
      }
      yield { index, gray: grayOfPixels(pixels) };
    }
  } finally {
    run.stop();
  }
}

async function* grayBackwards(source: GraySource, stretch: Stretch): AsyncGenerator<GrayFrame> {
  for (const piece of piecesOf(source, stretch)) {
    const kept = await takenUpTo(source, piece.to - 1, grayForwards(source, piece));
    for (let last = kept.pop(); last; last = kept.pop()) yield last;
  }
}

function piecesOf({ clip }: GraySource, { from, to }: Stretch): readonly Stretch[] {
  const keys = clip.clock.times.flatMap(({ isKey }, index) => (isKey ? [index] : []));
  const mostKept = Math.floor(KEPT_BYTES / (clip.size.widthPx * clip.size.heightPx));
  return backwardPieces(from, to, keys, mostKept);
}

/** Without what the bytes hold besides the picture. The run goes on after the last of them. */
async function takenUpTo(
  { spares }: GraySource,
  last: number,
  run: AsyncGenerator<GrayFrame>,
): Promise<GrayFrame[]> {
  const taken: GrayFrame[] = [];
  for (;;) {
    const { done, value } = await run.next();
    if (done) return taken;
    const { values } = value.gray;
    taken.push({ index: value.index, gray: { ...value.gray, values: values.slice() } });
    spares.push(new Uint8Array(values.buffer as ArrayBuffer));
    if (value.index >= last) return taken;
  }
}

function grayOfPixels({ kind, widthPx, heightPx, bytes }: SamplePixels): GrayFrame['gray'] {
  if (kind === 'luma') return { widthPx, heightPx, values: bytes };
  return grayOf(new Uint8ClampedArray(bytes.buffer), widthPx, heightPx);
}
