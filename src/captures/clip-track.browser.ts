/** A clip's video track, ready to be decoded. This file carries the clip reader: import it lazily. */
import {
  BlobSource,
  EncodedPacketSink,
  Input,
  type InputVideoTrack,
  MATROSKA,
  MP4,
  QTFF,
  WEBM,
} from 'mediabunny';
import { fail, ok, type Result } from '../basics/result.ts';
import type { CaptureFailure } from './capture-failure.ts';
import { type ClipTimes, clipTimes, type Packet } from './clip-times.ts';
import { codecName } from './codec-name.ts';
import type { ClipType } from './media-type.ts';
import { tooManyPixels } from './picture-limit.ts';
import { failureOfReading, type Reading } from './reading.browser.ts';
import { withinTime } from './time-limit.browser.ts';
import type { SizePx, Upright } from './upright.ts';

const INDEX_LIMIT_S = 60;

export type ClipTrack = {
  readonly track: InputVideoTrack;
  /** Upright, with square pixels. */
  readonly size: SizePx;
  readonly rotationDeg: Upright['rotationDeg'];
  /** By RFC 6381 where the reader can tell, as `avc1.64000c`. */
  readonly codec: string;
  readonly ticksPerSecond: number;
  readonly clock: ClipTimes;
  /** Frame by frame, here. */
  readonly decodes: boolean;
  readonly close: () => void;
};

type Opened = Promise<Result<ClipTrack, CaptureFailure>>;

/** For decoding. The caller closes the track. */
export const openClipTrack = (reading: Reading<ClipType>): Opened => openTrack(reading, true);

/** Of a clip that the browser perhaps does not decode, too: its frames and their times are known without. */
export const openClipIndex = (reading: Reading<ClipType>): Opened => openTrack(reading, false);

async function openTrack(reading: Reading<ClipType>, mustDecode: boolean): Opened {
  const { blob, mediaType, signal } = reading;
  const input = new Input({ formats: [MP4, QTFF, WEBM, MATROSKA], source: new BlobSource(blob) });
  let opened = false;
  try {
    const result = await withinTime(readTrack(input, mediaType, mustDecode), INDEX_LIMIT_S, signal);
    opened = result.ok;
    return result;
  } catch (reason) {
    return fail(failureOfReading(reason, reading, 'index'));
  } finally {
    if (!opened) input.dispose();
  }
}

async function readTrack(input: Input, mediaType: ClipType, mustDecode: boolean): Opened {
  if (!(await input.canRead())) return fail({ code: 'captures/damaged', mediaType, part: 'index' });
  const track = await input.getPrimaryVideoTrack();
  if (!track) return withoutVideo(input, mediaType);
  const codec = await track.getCodec();
  const decodes = await track.canDecode();
  if (mustDecode && !decodes) return notDecoded(track, mediaType);
  const size = { widthPx: await track.getDisplayWidth(), heightPx: await track.getDisplayHeight() };
  const tooLarge = tooManyPixels(size);
  if (tooLarge) return fail(tooLarge);

  const packets = await allPackets(track);
  const ticksPerSecond = await track.getTimeResolution();
  const clock = clipTimes(packets, ticksPerSecond);
  if (clock.times.length === 0) return fail({ code: 'captures/damaged', mediaType, part: 'index' });
  if (!(await hasLastPacket(track))) return fail({ code: 'captures/damaged', mediaType, part: 'end' });
  return ok({
    track,
    size,
    rotationDeg: await track.getRotation(),
    codec: ((await track.getCodecParameterString()) ?? codecName(codec, null)).slice(0, 64),
    ticksPerSecond,
    clock,
    decodes,
    close: () => input.dispose(),
  });
}

export async function notDecoded(
  track: InputVideoTrack,
  mediaType: ClipType,
): Promise<Result<never, CaptureFailure>> {
  const name = codecName(await track.getCodec(), await track.getInternalCodecId());
  return fail({ code: 'captures/codec-not-decoded', codec: name, mediaType });
}

/** An index that was cut off leaves no track at all; a sound recording has one, of another kind. */
async function withoutVideo(input: Input, mediaType: ClipType): Promise<Result<never, CaptureFailure>> {
  const tracks = await input.getTracks();
  return tracks.length === 0
    ? fail({ code: 'captures/damaged', mediaType, part: 'index' })
    : fail({ code: 'captures/no-video-track', mediaType });
}

async function allPackets(track: InputVideoTrack): Promise<Packet[]> {
  const packets: Packet[] = [];
  const sink = new EncodedPacketSink(track);
  for await (const { timestamp, duration, type } of sink.packets(undefined, undefined, {
    metadataOnly: true,
  }))
    packets.push({ timestampS: timestamp, durationS: duration, isKey: type === 'key' });
  return packets;
}

/** The index of a clip may lie in front of data that never arrived. */
async function hasLastPacket(track: InputVideoTrack): Promise<boolean> {
  return (await new EncodedPacketSink(track).getPacket(Number.POSITIVE_INFINITY)) !== null;
}
