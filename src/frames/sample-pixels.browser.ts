/** The pixels of a decoded frame as they are stored: not turned, not stretched. Import it lazily: it carries the clip reader. */
import type { VideoSample } from 'mediabunny';

/** luma: the Y plane, row by row, whatever its range. rgba: where the browser gives no such plane. */
export type SamplePixels = {
  readonly kind: 'luma' | 'rgba';
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bytes: Uint8Array;
};

/** Formats that begin with a plane of luma, one byte each. */
const PLANAR: ReadonlySet<string> = new Set(['I420', 'I420A', 'I422', 'I422A', 'I444', 'I444A', 'NV12']);

/** spare: bytes that nobody needs any more, filled anew where they suffice. The sample stays open. */
export async function samplePixels(sample: VideoSample, spare: Uint8Array | null): Promise<SamplePixels> {
  const { width, height } = sample.visibleRect;
  const size = { widthPx: width, heightPx: height };
  if (sample.format !== null && PLANAR.has(sample.format)) {
    const needed = sample.allocationSize();
    const bytes = spare && spare.byteLength >= needed ? spare : new Uint8Array(needed);
    const [luma] = await sample.copyTo(bytes);
    if (luma) return { kind: 'luma', ...size, bytes: tight(bytes, luma, width, height) };
  }
  const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (!pen) throw new DOMException('No canvas of that size', 'InvalidStateError');
  sample.drawWithFit(pen, { fit: 'fill', rotation: 0 });
  const { data } = pen.getImageData(0, 0, width, height);
  return { kind: 'rgba', ...size, bytes: new Uint8Array(data.buffer) };
}

function tight(
  bytes: Uint8Array,
  { offset, stride }: { readonly offset: number; readonly stride: number },
  width: number,
  height: number,
): Uint8Array {
  // Rows move to the front, or stay: each is read before it is written over.
  if (stride !== width || offset !== 0)
    for (let row = 0; row < height; row++)
      bytes.copyWithin(row * width, offset + row * stride, offset + row * stride + width);
  return bytes.subarray(0, width * height);
}
