/** A sample picture as the app itself would have taken it in: the same layout and EXIF reading, without a browser. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Capture } from '../../src/captures/capture.ts';
import { exifFactsOf } from '../../src/captures/exif.ts';
import { jpegLayout } from '../../src/captures/jpeg-layout.ts';
import { uprightOf, uprightSize } from '../../src/captures/upright.ts';
import { SAMPLE_MEDIA } from './demo-truth.ts';

/** `place` is the file's path below the sample media; the capture's file name is the name alone, as a camera's would be. */
export function demoCapture(id: string, place: string): Capture {
  const bytes = readFileSync(`${SAMPLE_MEDIA}/${place}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const layout = jpegLayout(view);
  if (!layout.ok) throw new Error(`${place}: ${layout.failure.code}`);
  const { stored, exif } = layout.value;
  const [block] = exif;
  if (!block) throw new Error(`${place}: no EXIF`);
  const facts = exifFactsOf(
    new DataView(view.buffer, view.byteOffset + block.begin, block.end - block.begin),
  );
  const upright = uprightOf(facts.orientation);
  return {
    id,
    kind: 'photo',
    fileName: basename(place),
    mediaType: 'image/jpeg',
    sizeBytes: bytes.byteLength,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    ...uprightSize(stored, upright),
    rotationDeg: upright.rotationDeg,
    takenAt: facts.takenAt,
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: facts.focal35Mm,
    clip: null,
  };
}
