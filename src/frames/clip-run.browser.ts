/** One decoder going forward through a clip. Import it lazily: it carries the clip reader. */
import { type VideoSample, VideoSampleSink } from 'mediabunny';
import type { ClipTrack } from '../captures/clip-track.browser.ts';
import { withinTime } from '../captures/time-limit.browser.ts';
import type { Frame } from './frame.ts';
import { frameAtTime } from './frame-choice.ts';

const STEP_LIMIT_S = 15;

/** Decoders count in whole microseconds. */
const CLOCK_SLACK_S = 2e-6;

export type Decoded = { readonly index: number; readonly sample: VideoSample };

export class ClipRun {
  /** The frame that comes next, as far as the index tells. */
  next: number;
  readonly #to: number | null;
  readonly #clip: ClipTrack;
  readonly #frames: readonly Frame[];
  readonly #samples: AsyncGenerator<VideoSample | null, void, unknown>;
  readonly #stopped = new AbortController();

  /** to: the last frame it gives, and decodes none after it; null: all to the clip's end, some forty ahead. */
  constructor(clip: ClipTrack, frames: readonly Frame[], from: number, to: number | null = null) {
    this.next = from;
    this.#to = to;
    this.#clip = clip;
    this.#frames = frames;
    const sink = new VideoSampleSink(clip.track);
    const { times } = clip.clock;
    this.#samples =
      to === null
        ? sink.samples(times[from]?.timestampS ?? 0)
        : sink.samplesAtTimestamps(times.slice(from, to + 1).map(({ timestampS }) => timestampS));
  }

  /** The last frame was given. */
  get ended(): boolean {
    return this.#to !== null && this.next > this.#to;
  }

  /** The next frame, whose sample the caller closes; null at the end. Rejects where the decoder gives up or takes too long. */
  async step(): Promise<Decoded | null> {
    for (;;) {
      const step = await withinTime(this.#samples.next(), STEP_LIMIT_S, this.#stopped.signal);
      if (step.done) return null;
      if (!step.value) continue;
      const index = this.#indexOf(step.value.timestamp);
      if (index !== null) {
        this.next = index + 1;
        return { index, sample: step.value };
      }
      step.value.close();
    }
  }

  stop(): void {
    this.#stopped.abort();
    void this.#samples.return().catch(() => undefined);
  }

  /** Null for what is no frame of the clip: before time 0. */
  #indexOf(timestampS: number): number | null {
    const ticks = timestampS * this.#clip.ticksPerSecond;
    const slack = Math.max(0.5, CLOCK_SLACK_S * this.#clip.ticksPerSecond);
    const frame = frameAtTime(this.#frames, Math.floor(ticks + slack));
    return frame && Math.abs(frame.timeTicks - ticks) <= slack ? frame.index : null;
  }
}
