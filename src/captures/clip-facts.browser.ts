/** What the record keeps of a clip, after its first frame was decoded: an index alone proves nothing. Import it lazily. */
import { VideoSampleSink } from 'mediabunny';
import { fail, ok, type Result } from '../basics/result.ts';
import type { CaptureFailure } from './capture-failure.ts';
import type { ClipTrack } from './clip-track.browser.ts';
import { boxAt } from './heif-boxes.ts';
import type { ClipType } from './media-type.ts';
import { movieTime } from './movie-time.ts';
import { failureOfReading, type Reading } from './reading.browser.ts';
import { openShownClip } from './shown-clip.browser.ts';
import { withinTime } from './time-limit.browser.ts';

const FIRST_FRAME_LIMIT_S = 20;
/** A movie has a handful of boxes beside each other; one in fragments has many, after its header. */
const LIMIT_BOXES = 200;
/** The header is the movie box's first and has some hundred bytes. */
const MOVIE_HEADER_BYTES = 512;

export type ClipFacts = Pick<ClipTrack, 'size' | 'rotationDeg' | 'codec' | 'ticksPerSecond' | 'clock'> & {
  readonly takenAt: string | null;
  readonly headerTime: string | null;
  readonly framesBy: 'decoder' | 'player';
};

export async function clipFacts(reading: Reading<ClipType>): Promise<Result<ClipFacts, CaptureFailure>> {
  const { mediaType, signal } = reading;
  const opened = await openShownClip(reading);
  if (!opened.ok) return opened;
  const { clip, player } = opened.value;
  const { track, size, rotationDeg, codec, ticksPerSecond, clock, close } = clip;
  try {
    // A player that opened has shown its first frame.
    if (!player) {
      const begin = clock.times[0]?.timestampS ?? 0;
      const first = new VideoSampleSink(track).getSample(begin);
      const sample = await withinTime(first, FIRST_FRAME_LIMIT_S, signal);
      if (!sample) return fail({ code: 'captures/damaged', mediaType, part: 'picture' });
      sample.close();
    }
    const { raw } = await track.input.getMetadataTags();
    const headerTime = await readHeaderTime(reading.blob);
    const framesBy = player ? 'player' : 'decoder';
    return ok({
      size,
      rotationDeg,
      codec,
      ticksPerSecond,
      clock,
      takenAt: takenAt(raw),
      headerTime,
      framesBy,
    });
  } catch (reason) {
    return fail(failureOfReading(reason, reading, 'picture'));
  } finally {
    player?.close();
    close();
  }
}

/** Only what the camera wrote with its own zone; the time in a movie header is often the time of a conversion. */
function takenAt(raw: Readonly<Record<string, unknown>> | undefined): string | null {
  const written = raw?.['com.apple.quicktime.creationdate'];
  return typeof written === 'string' && written.length > 0 ? written.slice(0, 64) : null;
}

/** Null also where the clip is no MP4 or QuickTime movie, which the clip reader has told by its index. */
async function readHeaderTime(blob: Blob): Promise<string | null> {
  for (let at = 0, boxes = 0; at + 16 <= blob.size && boxes < LIMIT_BOXES; boxes++) {
    const head = new DataView(await blob.slice(at, at + 16).arrayBuffer());
    // One that is cut short still has its header.
    const box = boxAt(head, 0, Number.POSITIVE_INFINITY);
    if (!box) return null;
    const begin = at + box.begin;
    if (box.kind === 'moov')
      return movieTime(new DataView(await blob.slice(begin, begin + MOVIE_HEADER_BYTES).arrayBuffer()));
    at += box.end;
  }
  return null;
}
