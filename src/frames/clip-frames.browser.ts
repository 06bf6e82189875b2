/** The frames of a clip: one request at a time, the newest one. Import it lazily: it carries the clip reader. */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import type { ClipTrack } from '../captures/clip-track.browser.ts';
import { TimeLimitError } from '../captures/time-limit.browser.ts';
import { framesOf } from './frame.ts';
import type { FrameFailure } from './frame-failure.ts';
import { ended, type FrameSource } from './frame-source.browser.ts';

type Answer = Result<ImageBitmap, FrameFailure>;

/** Comes to single frames in small steps (clip-decoder.browser.ts), or in one (played-frames.browser.ts). */
export type FrameDecoder = {
  /** A copy of the frame's picture where it is there. */
  ready(index: number): Promise<ImageBitmap | null>;
  /** False where the clip does not give it. */
  stepTowards(wanted: number): Promise<boolean>;
  stop(): void;
  close(): void;
};

type Request = {
  readonly index: number;
  readonly answer: (answer: Answer) => void;
  readonly end: (reason: unknown) => void;
};

/** Takes track and decoder over. */
export function clipFrames(clip: ClipTrack, decoder: FrameDecoder): FrameSource {
  const frames = framesOf(clip.clock.times);
  let newest: Request | null = null;
  let serving = false;
  let open = true;

  async function serve(): Promise<void> {
    if (serving) return;
    serving = true;
    while (newest) {
      const request: Request = newest;
      const answer = await answerOf(decoder, request.index, () => newest === request).catch((reason) => {
        request.end(reason);
        return null;
      });
      if (newest !== request) {
        if (answer?.ok) answer.value.close();
        continue;
      }
      newest = null;
      if (answer) request.answer(answer);
    }
    serving = false;
  }

  function replaceNewest(request: Request | null, why: string): void {
    newest?.end(ended(why));
    newest = request;
  }

  return {
    frames,
    played: !clip.decodes,
    async picture(frame, signal) {
      assert(frame !== null, 'a clip is asked for a frame');
      signal.throwIfAborted();
      if (!open) throw ended('The source is closed');
      const { index, timeTicks } = frame;
      if (frames[index]?.timeTicks !== timeTicks)
        return fail({ code: 'frames/no-such-frame', index, timeTicks });
      return untilAborted(signal, (answer, end) => {
        const request = { index, answer, end };
        replaceNewest(request, 'A newer frame was asked for');
        void serve();
        return () => {
          if (newest === request) newest = null;
        };
      });
    },
    close() {
      if (!open) return;
      open = false;
      replaceNewest(null, 'The source was closed');
      decoder.close();
      clip.close();
    },
  };
}

function untilAborted(
  signal: AbortSignal,
  ask: (answer: (answer: Answer) => void, end: (reason: unknown) => void) => () => void,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const withdraw = ask(
      (answer) => {
        signal.removeEventListener('abort', abort);
        resolve(answer);
      },
      (reason) => {
        signal.removeEventListener('abort', abort);
        reject(reason);
      },
    );
    function abort() {
      withdraw();
      reject(signal.reason);
    }
    signal.addEventListener('abort', abort, { once: true });
  });
}

/** Steps until the frame is there, is known not to come, or is no longer wanted; an idle decoder gets a second chance. */
async function answerOf(decoder: FrameDecoder, index: number, wanted: () => boolean): Promise<Answer> {
  let failed = false;
  while (wanted()) {
    try {
      const picture = await decoder.ready(index);
      if (picture) return ok(picture);
      if (await decoder.stepTowards(index)) continue;
    } catch (reason) {
      decoder.stop();
      if (reason instanceof TimeLimitError)
        return fail({ code: 'frames/decoder-stalled', index, limitS: reason.limitS });
      if (reason instanceof DOMException && ['NotReadableError', 'NotFoundError'].includes(reason.name))
        return fail({ code: 'frames/not-readable', index });
    }
    if (failed) break;
    failed = true;
    decoder.stop();
  }
  return fail({ code: 'frames/not-decoded', index });
}
