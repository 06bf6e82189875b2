/** A photo is one picture, decoded once and kept while the source is open. */
import { assert, fail, ok } from '../basics/result.ts';
import { ended, type FrameSource } from './frame-source.browser.ts';

/** Takes the picture over. */
export function photoFrames(picture: ImageBitmap): FrameSource {
  let open = true;
  return {
    frames: [],
    played: false,
    async picture(frame, signal) {
      assert(frame === null, 'a photo has no frames');
      signal.throwIfAborted();
      if (!open) throw ended('The source is closed');
      const copy = await createImageBitmap(picture).catch(() => null);
      if (signal.aborted) {
        copy?.close();
        throw signal.reason;
      }
      return copy ? ok(copy) : fail({ code: 'frames/not-readable', index: 0 });
    },
    close() {
      open = false;
      picture.close();
    },
  };
}
