/** Brings single frames of a clip to pictures, one small step at a time. Import it lazily: it carries the clip reader. */
import type { VideoSample } from 'mediabunny';
import type { ClipTrack } from '../captures/clip-track.browser.ts';
import type { FrameDecoder } from './clip-frames.browser.ts';
import { ClipRun } from './clip-run.browser.ts';
import { decodePlan, keptPictures } from './decode-plan.ts';
import { type Frame, framesOf } from './frame.ts';
import { PictureRing } from './picture-ring.browser.ts';

export class ClipDecoder implements FrameDecoder {
  readonly #clip: ClipTrack;
  readonly #frames: readonly Frame[];
  readonly #keys: readonly number[];
  readonly #kept: number;
  readonly #ring: PictureRing;
  readonly #canvas: OffscreenCanvas;
  #run: ClipRun | null = null;
  #playhead: number | null = null;
  #closed = false;

  constructor(clip: ClipTrack) {
    const { widthPx, heightPx } = clip.size;
    this.#clip = clip;
    this.#frames = framesOf(clip.clock.times);
    this.#keys = clip.clock.times.flatMap(({ isKey }, index) => (isKey ? [index] : []));
    this.#kept = keptPictures(widthPx, heightPx);
    this.#ring = new PictureRing(this.#kept);
    this.#canvas = new OffscreenCanvas(widthPx, heightPx);
  }

  /** A copy of the frame's picture where it is decoded. */
  async ready(index: number): Promise<ImageBitmap | null> {
    const picture = this.#ring.get(index);
    if (!picture) return null;
    this.#playhead = index;
    return createImageBitmap(picture);
  }

  /** One frame further on the way to the wanted one; false when the clip ends or passes it by without giving it. */
  async stepTowards(wanted: number): Promise<boolean> {
    const run = this.#run;
    const plan = decodePlan(wanted, {
      next: run && !run.ended ? run.next : null,
      playhead: this.#playhead,
      kept: this.#kept,
      keys: this.#keys,
    });
    if (plan.kind === 'start') this.#start(plan.from, plan.to);
    const decoded = await this.#run?.step();
    if (!decoded) return false;
    const { index, sample } = decoded;
    try {
      // Closed while the decoder was at it: what is kept now nobody would free.
      if (this.#closed) return false;
      if (index === wanted || this.#ring.wants(index, wanted))
        this.#ring.keep(index, this.#draw(sample), wanted);
    } finally {
      sample.close();
    }
    return index <= wanted;
  }

  /** After a failed step: browsers take decoders away that were idle for long. */
  stop(): void {
    this.#run?.stop();
    this.#run = null;
  }

  close(): void {
    this.#closed = true;
    this.stop();
    this.#ring.clear();
  }

  #start(from: number, to: number | null): void {
    this.stop();
    this.#run = new ClipRun(this.#clip, this.#frames, from, to);
  }

  #draw(sample: VideoSample): ImageBitmap {
    const { widthPx, heightPx } = this.#clip.size;
    const context = this.#canvas.getContext('2d', { alpha: false });
    if (!context) throw new DOMException('No canvas of that size', 'InvalidStateError');
    sample.draw(context, 0, 0, widthPx, heightPx);
    return this.#canvas.transferToImageBitmap();
  }
}
