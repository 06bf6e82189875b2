/** What is cut out of a capture to judge one state by: the frame that was taken, and of a clip some beside it. */

import { fail, ok, type Result } from '../../basics/result.ts';
import type { BandColour } from '../../finding/over-stroke-mark.ts';
import type { Frame } from '../../frames/frame.ts';
import type { FrameSource } from '../../frames/frame-source.browser.ts';
import { sharpestPlace, type Track } from '../../marks/track.ts';
import type { RodInPicture } from '../../measurement/rod-in-picture.ts';
import { paintBox } from '../../vision/paint-region.ts';
import type { Rect } from '../../vision/rect.ts';
import type { AskedPicture } from '../media/asked-picture.ts';
import type { PictureFailure } from '../media/picture-of.ts';

export type PaintQuestion = {
  readonly picture: AskedPicture;
  readonly rod: RodInPicture;
  readonly track: Track | null;
  /** Null: any. */
  readonly bandColour: BandColour | null;
};

/** A piece of one frame: the worker closes the picture. */
export type PaintFrame = { readonly picture: ImageBitmap; readonly box: Rect; readonly rod: RodInPicture };

export type PaintFramesFailure = PictureFailure | { readonly code: 'paint/outside' };

/** Of a clip: the brake is held for longer than these are apart, and its frames are coded each in its own way. */
const BESIDE = [0, -2, 2, -4, 4];

export async function paintFrames(
  question: PaintQuestion,
  signal: AbortSignal,
): Promise<Result<readonly PaintFrame[], PaintFramesFailure>> {
  const { openFrames } = await import('../../frames/open-frames.browser.ts');
  const { capture, file, frame: taken } = question.picture;
  const opened = await openFrames(capture, file, signal);
  if (!opened.ok) return opened;
  const frames: PaintFrame[] = [];
  try {
    for (const frame of framesOf(taken, opened.value)) {
      const piece = await pieceOf(question, frame, opened.value, signal);
      if (piece.ok) frames.push(piece.value);
      else if (frames.length === 0) return piece;
    }
    return ok(frames);
  } catch (thrown) {
    for (const { picture } of frames) picture.close();
    throw thrown;
  } finally {
    opened.value.close();
  }
}

function framesOf(frame: Frame | null, { frames }: FrameSource): readonly (Frame | null)[] {
  if (!frame) return [null];
  return BESIDE.flatMap((beside) => (beside === 0 ? frame : (frames[frame.index + beside] ?? [])));
}

async function pieceOf(
  { rod, track, picture: { frame: taken } }: PaintQuestion,
  frame: Frame | null,
  source: FrameSource,
  signal: AbortSignal,
): Promise<Result<PaintFrame, PaintFramesFailure>> {
  const picture = await source.picture(frame, signal);
  if (!picture.ok) return picture;
  try {
    const moved = taken && frame ? movedRod(rod, track, taken, frame) : rod;
    const { width: widthPx, height: heightPx } = picture.value;
    const box = paintBox(moved, { widthPx, heightPx });
    if (box.widthPx < 1 || box.heightPx < 1) return fail({ code: 'paint/outside' });
    const piece = await createImageBitmap(picture.value, box.xPx, box.yPx, box.widthPx, box.heightPx);
    return ok({ picture: piece, box, rod: moved });
  } finally {
    picture.value.close();
  }
}

/** Carried along with the chamber face where the clip was followed; else the camera is taken to have moved little. */
function movedRod(rod: RodInPicture, track: Track | null, taken: Frame, frame: Frame): RodInPicture {
  if (!track) return rod;
  const [from, to] = [taken, frame].map(({ index }) =>
    sharpestPlace(track, 'chamber-face', index - track.firstIndex),
  );
  if (!from || !to) return rod;
  return { ...rod, facePx: [rod.facePx[0] + to.xPx - from.xPx, rod.facePx[1] + to.yPx - from.yPx] };
}
