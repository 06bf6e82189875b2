/**
 * Writes a clip that carries the followed lines, frame for frame at the original's own times. Import it lazily: it carries the clip
 * writer. MP4 with H.264 where this browser can encode that, else WebM with VP9; without sound.
 *
 * Fails    'annotated-clip/...' where it cannot be encoded or a frame is missing: there is no half a clip. Rejects with the signal's
 *          reason when aborted.
 */

import {
  BufferTarget,
  CanvasSource,
  canEncodeVideo,
  Mp4OutputFormat,
  Output,
  Quality,
  type VideoCodec,
  WebMOutputFormat,
} from 'mediabunny';
import { fail, ok, type Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import { type ClipTrack, openClipTrack } from '../../captures/clip-track.browser.ts';
import { FIRST_BYTES, isPhotoType, mediaTypeOf } from '../../captures/media-type.ts';
import { TimeLimitError } from '../../captures/time-limit.browser.ts';
import { ClipRun } from '../../frames/clip-run.browser.ts';
import { framesOf } from '../../frames/frame.ts';
import { ANNOTATED } from '../words/curve.ts';
import type { AnnotateFailure } from './annotate-failure.ts';
import { type Annotation, paintAnnotations } from './annotated-frame.ts';
import { type Foot, footFor } from './clip-foot.ts';
import { type Context, FACE } from './paint-follow.ts';

export type AnnotatedClip = { readonly blob: Blob; readonly fileName: string; readonly frames: number };

type Task = {
  readonly capture: Capture;
  readonly blob: Blob;
  readonly annotation: Annotation;
  readonly signal: AbortSignal;
  readonly onProgress: (written: number, frames: number) => void;
};

export async function annotatedClip(task: Task): Promise<Result<AnnotatedClip, AnnotateFailure>> {
  const { capture, blob, signal } = task;
  const type = mediaTypeOf(new Uint8Array(await blob.slice(0, FIRST_BYTES).arrayBuffer()));
  if (!type.ok) return type;
  if (isPhotoType(type.value)) return fail({ code: 'captures/no-video-track', mediaType: type.value });
  const opened = await openClipTrack({ blob, mediaType: type.value, signal });
  if (!opened.ok) return opened;
  try {
    await document.fonts.load(`600 22px ${FACE}`);
    const context = new OffscreenCanvas(1, 1).getContext('2d', { alpha: false });
    if (!context) return fail({ code: 'frames/not-readable', index: 0 });
    const foot = footFor(context, opened.value.size, ANNOTATED.note(capture.fileName, capture.sha256));
    const codec = await codecFor(foot);
    if (!codec) return fail({ code: 'annotated-clip/cannot-encode', ...foot.size });
    return await written(task, opened.value, { context, foot, codec });
  } finally {
    opened.value.close();
  }
}

type Sheet = { readonly context: Context; readonly foot: Foot; readonly codec: VideoCodec };

const QUALITY = new Quality('very-high');

async function codecFor({ size }: Foot): Promise<VideoCodec | null> {
  for (const codec of ['avc', 'vp9'] as const)
    if (await canEncodeVideo(codec, { width: size.widthPx, height: size.heightPx, quality: QUALITY }))
      return codec;
  return null;
}

async function written(
  { capture, annotation, signal, onProgress }: Task,
  clip: ClipTrack,
  { context, foot, codec }: Sheet,
): Promise<Result<AnnotatedClip, AnnotateFailure>> {
  const { canvas } = context;
  canvas.width = foot.size.widthPx;
  canvas.height = foot.size.heightPx;
  const mp4 = codec === 'avc';
  const target = new BufferTarget();
  const output = new Output({
    format: mp4 ? new Mp4OutputFormat({ fastStart: 'in-memory' }) : new WebMOutputFormat(),
    target,
  });
  const source = new CanvasSource(canvas, { codec, quality: QUALITY, keyFrameInterval: 1 });
  // The clip's own clock as the rate: its times stay whole ticks.
  output.addVideoTrack(source, { frameRate: clip.ticksPerSecond });
  const frames = framesOf(clip.clock.times);
  const run = new ClipRun(clip, frames, 0);
  let count = 0;
  let decoding = false;
  let finished = false;
  try {
    await output.start();
    for (;;) {
      signal.throwIfAborted();
      decoding = true;
      const decoded = await run.step();
      decoding = false;
      if (!decoded) break;
      try {
        decoded.sample.draw(context, 0, 0, clip.size.widthPx, clip.size.heightPx);
      } finally {
        decoded.sample.close();
      }
      const { timeTicks } = frames[decoded.index] as (typeof frames)[number];
      const instant = { index: decoded.index, timeTicks, ticksPerSecond: clip.ticksPerSecond };
      paintAnnotations(context, clip.size, foot, annotation, instant);
      await source.add(...timing(clip, decoded.index));
      count++;
      onProgress(count, frames.length);
    }
    if (count < frames.length)
      return fail({ code: 'annotated-clip/frames-missing', written: count, frames: frames.length });
    await output.finalize();
    finished = true;
    const type = mp4 ? 'video/mp4' : 'video/webm';
    const fileName = ANNOTATED.fileName(capture.fileName, mp4 ? 'mp4' : 'webm');
    return ok({ blob: new Blob([target.buffer ?? new ArrayBuffer(0)], { type }), fileName, frames: count });
  } catch (reason) {
    if (signal.aborted) throw signal.reason;
    if (reason instanceof TimeLimitError)
      return fail({ code: 'frames/decoder-stalled', index: run.next, limitS: reason.limitS });
    if (decoding) return fail({ code: 'frames/not-decoded', index: run.next });
    return fail({ code: 'annotated-clip/encoder-stopped', written: count, frames: frames.length });
  } finally {
    run.stop();
    if (!finished) await output.cancel();
  }
}

/** Each frame until the next one; the last until the clip's end. */
function timing({ clock, ticksPerSecond }: ClipTrack, index: number): [timeS: number, durationS: number] {
  const at = (ticks: number) => ticks / ticksPerSecond;
  const timeS = at(clock.times[index]?.timeTicks ?? 0);
  const next = clock.times[index + 1];
  const endS = next ? at(next.timeTicks) : at(clock.times[0]?.timeTicks ?? 0) + clock.durationS;
  return [timeS, Math.max(0, endS - timeS)];
}
