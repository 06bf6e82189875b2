/** A clip of which single frames can be shown: decoded, or by the browser's player. Import it lazily. */
import { ok, type Result } from '../basics/result.ts';
import type { CaptureFailure } from './capture-failure.ts';
import { ClipPlayer } from './clip-player.browser.ts';
import { type ClipTrack, notDecoded, openClipIndex } from './clip-track.browser.ts';
import type { ClipType } from './media-type.ts';
import type { Reading } from './reading.browser.ts';

export type ShownClip = {
  readonly clip: ClipTrack;
  /** Null: it is decoded. */
  readonly player: ClipPlayer | null;
};

/** The caller closes both. */
export async function openShownClip(reading: Reading<ClipType>): Promise<Result<ShownClip, CaptureFailure>> {
  const opened = await openClipIndex(reading);
  if (!opened.ok) return opened;
  const clip = opened.value;
  if (clip.decodes) return ok({ clip, player: null });
  let player: ClipPlayer | null = null;
  try {
    player = await ClipPlayer.open(reading.blob, clip.size, reading.signal);
    return player ? ok({ clip, player }) : await notDecoded(clip.track, reading.mediaType);
  } finally {
    if (!player) clip.close();
  }
}
