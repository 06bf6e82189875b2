/** Single frames of a clip by the browser's player: each is sought by its time, and taken only where the player shows that one. */
import type { ClipPlayer } from '../captures/clip-player.browser.ts';
import type { ClipTimes } from '../captures/clip-times.ts';
import type { FrameDecoder } from './clip-frames.browser.ts';

export class PlayedFrames implements FrameDecoder {
  readonly #player: ClipPlayer;
  readonly #clock: ClipTimes;
  #kept: { readonly index: number; readonly picture: ImageBitmap } | null = null;
  #closed = false;

  constructor(player: ClipPlayer, clock: ClipTimes) {
    this.#player = player;
    this.#clock = clock;
  }

  async ready(index: number): Promise<ImageBitmap | null> {
    return this.#kept?.index === index ? createImageBitmap(this.#kept.picture) : null;
  }

  async stepTowards(wanted: number): Promise<boolean> {
    const { times, durationS } = this.#clock;
    const beginS = times[wanted]?.timestampS;
    if (beginS === undefined || this.#closed) return false;
    const endS = times[wanted + 1]?.timestampS ?? (times[0]?.timestampS ?? 0) + durationS;
    const picture = await this.#player.frame((beginS + Math.max(endS, beginS)) / 2, beginS);
    this.#kept?.picture.close();
    this.#kept = { index: wanted, picture };
    if (this.#closed) this.#drop();
    return !this.#closed;
  }

  stop(): void {}

  close(): void {
    this.#closed = true;
    this.#drop();
    this.#player.close();
  }

  #drop(): void {
    this.#kept?.picture.close();
    this.#kept = null;
  }
}
