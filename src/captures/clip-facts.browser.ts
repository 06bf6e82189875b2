/** What the record keeps of a clip, after its first frame was decoded: an index alone proves nothing. Import it lazily. */
import { VideoSampleSink } from 'mediabunny';
import { fail, ok, type Result } from '../basics/result.ts';
import type { CaptureFailure } from './capture-failure.ts';
import { type ClipTrack, openClipTrack } from './clip-track.browser.ts';
import type { ClipType } from './media-type.ts';
import { failureOfReading, type Reading } from './reading.browser.ts';
import { withinTime } from './time-limit.browser.ts';

const FIRST_FRAME_LIMIT_S = 20;

export type ClipFacts = Pick<ClipTrack, 'size' | 'rotationDeg' | 'codec' | 'ticksPerSecond' | 'clock'> & {
  readonly takenAt: string | null;
};

export async function clipFacts(reading: Reading<ClipType>): Promise<Result<ClipFacts, CaptureFailure>> {
  const { mediaType, signal } = reading;
  const opened = await openClipTrack(reading);
  if (!opened.ok) return opened;
  const { track, size, rotationDeg, codec, ticksPerSecond, clock, close } = opened.value;
  try {
    const begin = clock.times[0]?.timestampS ?? 0;
    const sample = await withinTime(new VideoSampleSink(track).getSample(begin), FIRST_FRAME_LIMIT_S, signal);
    if (!sample) return fail({ code: 'captures/damaged', mediaType, part: 'picture' });
    sample.close();
    const { raw } = await track.input.getMetadataTags();
    return ok({ size, rotationDeg, codec, ticksPerSecond, clock, takenAt: takenAt(raw) });
  } catch (reason) {
    return fail(failureOfReading(reason, reading, 'picture'));
  } finally {
    close();
  }
}

/** Only what the camera wrote with its own zone; the time in a movie header is often the time of a conversion. */
function takenAt(raw: Readonly<Record<string, unknown>> | undefined): string | null {
  const written = raw?.['com.apple.quicktime.creationdate'];
  return typeof written === 'string' && written.length > 0 ? written.slice(0, 64) : null;
}
