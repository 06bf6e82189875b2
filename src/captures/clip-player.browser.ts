/** A clip in the browser's own player, where the browser does not decode it frame by frame. */
import { withinTime } from './time-limit.browser.ts';
import type { SizePx } from './upright.ts';

const LIMIT_S = 15;
/** Players count in microseconds, some files in milliseconds. */
const SLACK_S = 1e-3;

export class ClipPlayer {
  readonly #video: HTMLVideoElement;
  readonly #canvas: OffscreenCanvas;
  readonly #closed = new AbortController();

  /** Null where there is no player, it does not say which frame it shows, or it does not play this clip. */
  static async open(
    blob: Blob,
    { widthPx, heightPx }: SizePx,
    signal: AbortSignal,
  ): Promise<ClipPlayer | null> {
    if (!('document' in globalThis) || !('requestVideoFrameCallback' in HTMLVideoElement.prototype))
      return null;
    const player = new ClipPlayer(blob, new OffscreenCanvas(widthPx, heightPx));
    const plays = await withinTime(player.#ready(), LIMIT_S, signal).catch((reason) => {
      player.close();
      if (signal.aborted) throw reason;
      return false;
    });
    if (plays) return player;
    player.close();
    return null;
  }

  private constructor(blob: Blob, canvas: OffscreenCanvas) {
    this.#canvas = canvas;
    this.#video = document.createElement('video');
    this.#video.muted = true;
    this.#video.playsInline = true;
    this.#video.preload = 'auto';
    this.#video.src = URL.createObjectURL(blob);
  }

  #ready(): Promise<boolean> {
    return new Promise((resolve) => {
      this.#video.addEventListener('error', () => resolve(false), { once: true });
      this.#video.addEventListener('loadeddata', () => resolve(this.#video.videoWidth > 0), { once: true });
    });
  }

  /** Goes to that time, within the frame that begins at beginS. Only that frame is taken, by the time that the player says it has. */
  async frame(timeS: number, beginS: number): Promise<ImageBitmap> {
    let callback = 0;
    const shown = new Promise<ImageBitmap>((resolve, reject) => {
      const look = (_: number, { mediaTime }: VideoFrameCallbackMetadata) => {
        try {
          if (Math.abs(mediaTime - beginS) < SLACK_S) resolve(this.#draw());
          else callback = this.#video.requestVideoFrameCallback(look);
        } catch (reason) {
          reject(reason);
        }
      };
      callback = this.#video.requestVideoFrameCallback(look);
      this.#video.currentTime = timeS;
    });
    try {
      return await withinTime(shown, LIMIT_S, this.#closed.signal);
    } finally {
      this.#video.cancelVideoFrameCallback(callback);
    }
  }

  close(): void {
    this.#closed.abort();
    URL.revokeObjectURL(this.#video.src);
    this.#video.removeAttribute('src');
    this.#video.load();
  }

  #draw(): ImageBitmap {
    const context = this.#canvas.getContext('2d', { alpha: false });
    if (!context) throw new DOMException('No canvas of that size', 'InvalidStateError');
    context.drawImage(this.#video, 0, 0, this.#canvas.width, this.#canvas.height);
    return this.#canvas.transferToImageBitmap();
  }
}
