/** The one way to OpenCV's memory: what is kept in the scope is deleted at its end, and what OpenCV throws becomes a failure. */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Held, Opencv } from './opencv.ts';
import type { VisionFailure } from './vision-failure.ts';

export type Keep = <T extends Held>(held: T) => T;

export function withOpencv<T>(cv: Opencv, work: (keep: Keep) => T): Result<T, VisionFailure> {
  const kept: Held[] = [];
  try {
    return ok(
      work((held) => {
        kept.push(held);
        return held;
      }),
    );
  } catch (thrown) {
    // Its exceptions arrive as the number of their place in its memory; when memory ends, WebAssembly throws a RuntimeError.
    if (typeof thrown === 'number')
      return fail({ code: 'vision/opencv-failed', text: cv.exceptionFromPtr(thrown).msg });
    if (thrown instanceof Error && thrown.name === 'RuntimeError')
      return fail({ code: 'vision/opencv-failed', text: thrown.message });
    throw thrown;
  } finally {
    for (const held of kept.reverse()) held.delete();
  }
}
