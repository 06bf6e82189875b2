/// <reference types="vite/client" />
/**
 * Decodes one HEIC picture with libheif (LGPL-3.0), which stays a file of its own beside the page's script, loaded by its
 * address, so that it can be replaced. In a worker, because it cannot be interrupted: the page ends the worker instead.
 */
import libheifUrl from 'libheif-js/libheif-wasm/libheif-bundle.mjs?url';

/** The little of libheif that is used here. */
type Libheif = {
  readonly HeifDecoder: new () => { decode(bytes: ArrayBuffer): readonly HeifImage[] };
};

type HeifImage = {
  is_primary(): number | boolean;
  get_width(): number;
  get_height(): number;
  display(into: PixelStore, done: (filled: PixelStore | null) => void): void;
};

type PixelStore = {
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
};

/** Null: libheif made nothing of it. */
export type HeicAnswer = ImageBitmap | null;

globalThis.addEventListener('message', (event: MessageEvent<ArrayBuffer>) => {
  decode(event.data).then(
    (picture) => globalThis.postMessage(picture, { transfer: picture ? [picture] : [] }),
    () => globalThis.postMessage(null),
  );
});

async function decode(bytes: ArrayBuffer): Promise<HeicAnswer> {
  const { default: start }: { default: () => Libheif } = await import(/* @vite-ignore */ libheifUrl);
  const images = new (start().HeifDecoder)().decode(bytes);
  const image = images.find((each) => each.is_primary()) ?? images[0];
  if (!image) return null;
  const pixels = new ImageData(image.get_width(), image.get_height());
  const filled = await new Promise<PixelStore | null>((resolve) => image.display(pixels, resolve));
  return filled ? createImageBitmap(pixels) : null;
}
